using StormClock.Service.Store;
using StormClock.StoreTorture;

// usage: <folder> <transactions>. Prints "open" when the store is open, then the number of each acknowledged transaction.
// usage: <folder> send <port> <minutes>. Prints "open" and sends what is due by then to a mail server on this machine.
var output = Console.OpenStandardOutput();
using var store = StormStore.Open(args[0]);
if (args[1] == "send")
{
    Say("open");
    await Sending.RunAsync(store, Whole(args[2]), Workload.Start + Duration.FromMinutes(Whole(args[3])));
    return;
}

var first = store.Read(Workload.LastNumber) + 1;
Say("open");
for (var number = first; number < first + Whole(args[1]); number++)
{
    await store.WriteAsync(transaction => Workload.Transact(transaction, number));
    Say($"{number}");
}

static int Whole(string text) => int.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

void Say(string line)
{
    output.Write(System.Text.Encoding.ASCII.GetBytes(line + "\n"));
    output.Flush();
}
