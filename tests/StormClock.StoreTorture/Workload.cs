using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Service.Delivery;
using StormClock.Service.Outbox;
using StormClock.Service.Store;

namespace StormClock.StoreTorture;

/// <summary>What the process that is killed writes, and what the one that looks afterwards expects.</summary>
public static class Workload
{
    public const string GardenId = "hollow";
    public const string EpisodeId = "2027-1";

    private const int JobsPerEpisode = 40;
    public static readonly Instant Start = Instant.FromUtc(2027, 9, 12, 10, 0);

    /// <summary>
    /// Transaction <paramref name="number"/>: a new entry, the one before it sent, a job answered, the number noted, and
    /// now and then a large advisory. Running it twice is the same as once.
    /// </summary>
    public static void Transact(StoreTransaction transaction, int number)
    {
        var entry = EntryOf(number);
        if (OutboxTable.Find(transaction, entry.Id) is null) OutboxTable.Insert(transaction, entry);
        if (number > 0 && OutboxTable.Find(transaction, EntryOf(number - 1).Id) is { State: OutboxState.Waiting } before)
            OutboxTable.Update(transaction, before with { State = OutboxState.Sent, Settled = Start });
        JobStates.Put(transaction, GardenId, EpisodeId, JobStateOf(number));
        Meta.Put(transaction, "last", $"{number}");
        if (number % 10 == 9) Advisories.Add(transaction, AdvisoryOf(number));
    }

    /// <summary>Number of the last transaction in the store; -1 for none.</summary>
    public static int LastNumber(StoreReader reader) =>
        int.Parse(Meta.Find(reader, "last") ?? "-1", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>What is wrong with a store whose last transaction is the one it says; empty when all of every transaction is there and nothing else.</summary>
    public static IReadOnlyList<string> FaultsOf(StoreReader reader)
    {
        var last = LastNumber(reader);
        var faults = new List<string>();
        for (var i = 0; i <= last; i++) faults.AddRange(EntryFaults(reader, i, i == last ? OutboxState.Waiting : OutboxState.Sent));
        Expect(faults, "entries of the garden", last + 1, OutboxTable.OfGarden(reader, GardenId).Count);
        Expect(faults, "waiting entries", Math.Min(last + 1, 1), OutboxTable.InState(reader, OutboxState.Waiting).Count);
        Expect(faults, "sent entries", Math.Max(last, 0), OutboxTable.Count(reader, OutboxState.Sent));
        var jobs = Enumerable.Range(0, last + 1).Select(JobStateOf).GroupBy(state => state.JobId).Select(said => said.Last()).ToHashSet();
        if (!jobs.SetEquals(JobStates.OfEpisode(reader, GardenId, EpisodeId))) faults.Add("job states differ");
        var advisories = Enumerable.Range(0, last + 1).Where(i => i % 10 == 9).Select(AdvisoryOf).ToDictionary(heard => heard.Id, heard => heard.Raw);
        var heard = Advisories.All(reader);
        Expect(faults, "advisories", advisories.Count, heard.Count);
        if (!heard.All(one => advisories.TryGetValue(one.Id, out var raw) && raw.AsSpan().SequenceEqual(one.Raw))) faults.Add("advisories differ");
        return faults;
    }

    private static IEnumerable<string> EntryFaults(StoreReader reader, int number, OutboxState state)
    {
        var expected = EntryOf(number);
        var found = OutboxTable.Find(reader, expected.Id);
        if (found is null) yield return $"entry {number} is missing";
        else if (found.State != state || found.Message != expected.Message) yield return $"entry {number} is {found.State}, not {state}, or has other words";
        if (OutboxTable.FindByKey(reader, expected.Key)?.Id != expected.Id) yield return $"entry {number} is not found by its key";
    }

    private static void Expect(List<string> faults, string what, int expected, int found)
    {
        if (expected != found) faults.Add($"{what}: {found}, not {expected}");
    }

    /// <summary>A letter of its own for each number, due from <see cref="Start"/>.</summary>
    public static OutboxEntry EntryOf(int number)
    {
        var key = new ReminderKey(GardenId, EpisodeId, "ada", ReminderReason.WorkDay, $"{number}", "email");
        var ids = OutboxIds.For(key, "torture");
        var message = new Outgoing(ids.EntryId, ids.MessageId, ids.ThreadId, "Ada", "ada@garden.example", $"Work {number}", new string('t', 50 + (number % 700)), "<p></p>", Start);
        return new OutboxEntry(
            ids.EntryId, key.ToString(), "email", GardenId, "ada", nameof(ReminderReason.WorkDay), "cause", [], message,
            Start, Start, Start + Duration.FromHours(6), false, OutboxState.Waiting, 0, Start, null, null);
    }

    private static JobState JobStateOf(int number) =>
        new($"job {number % JobsPerEpisode}", (JobProgress)(number % 5), Start + Duration.FromSeconds(number), "ada");

    private static HeardAdvisory AdvisoryOf(int number)
    {
        var raw = new byte[1000 + (number * 977 % 20_000)];
        new Random(number).NextBytes(raw);
        return new HeardAdvisory($"advisory {number}", raw, "cap", Start, Start, "feed");
    }
}
