using SharpFuzz;
using StormClock.Core.Formats;
using StormClock.Core.Formats.Feeds;

// Breaks the readers by coverage: AFL++ makes inputs, and this program tells it which ways they take through StormClock.Core.
// run.sh beside it builds, instruments and runs; what it finds lies in its output folder under crashes/ and hangs/.

// "once FILES" reads them without AFL++, to see what one of its findings does; for a build that is not instrumented.
if (args is ["once", .. var files])
{
    foreach (var file in files) Console.WriteLine($"{file}: {(Read(File.ReadAllBytes(file)) ? "good" : "refused")}");
    return;
}

Fuzzer.OutOfProcess.Run(stream =>
{
    using var bytes = new MemoryStream();
    stream.CopyTo(bytes);
    Read(bytes.ToArray());
});

// Everything that takes bytes from outside; whatever comes, it answers with a value or a fault.
static bool Read(byte[] bytes)
{
    var message = MessageReader.ReadAll(bytes).IsGood;
    var list = FeedIndexReader.Read(bytes);
    foreach (var entry in list.Value?.Entries.Where(entry => !entry.Message.IsEmpty).Take(20) ?? []) MessageReader.ReadAll(entry.Message);
    return message || list.IsGood;
}
