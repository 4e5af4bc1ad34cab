using StormClock.Service.Store;
using StormClock.StoreTorture;

// usage: <folder> <transactions>. Prints "open" when the store is open, then the number of each acknowledged transaction.
using var store = StormStore.Open(args[0]);
var first = store.Read(Workload.LastNumber) + 1;
var output = Console.OpenStandardOutput();
Say("open");
for (var number = first; number < first + int.Parse(args[1], System.Globalization.CultureInfo.InvariantCulture); number++)
{
    await store.WriteAsync(transaction => Workload.Transact(transaction, number));
    Say($"{number}");
}

void Say(string line)
{
    output.Write(System.Text.Encoding.ASCII.GetBytes(line + "\n"));
    output.Flush();
}
