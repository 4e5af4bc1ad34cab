using System.Collections.Concurrent;
using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Core.Recheck;
using StormClock.Core.Stages;
using StormClock.Service.Calendars;
using StormClock.Service.Delivery;
using StormClock.Service.Feeds;
using StormClock.Service.Feeds.Health;
using StormClock.Service.Messages;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Wording;

namespace StormClock.Service.Desk;

/// <summary>
/// Feeds the one pure door of Core with what is known, and makes durable what it says: standing and outbox change in one
/// transaction, so that a crash leaves either the old decision or the new one.
/// </summary>
public sealed class GardenDesk(StormDesk desk, StormStore store, GardenShelf shelf, Inbox inbox, FeedWatch watch, LetterDesk letters, LetterEnclosures enclosures, PeopleReach reach, IClock clock, Journal journal)
{
    /// <summary>The last decision for each garden, for the pages.</summary>
    public IReadOnlyDictionary<string, Decision> Latest => latest;

    /// <summary>A stage above Nothing due holds in some garden.</summary>
    public bool IsStorm => latest.Values.Any(decision => decision.Standing.Stage.Stage > Stage.NothingDue);

    /// <summary>Pages read it while a turn is being taken.</summary>
    private readonly ConcurrentDictionary<string, Decision> latest = new();

    /// <summary>Decides for every garden; the soonest time at which time alone changes a decision.</summary>
    public async Task<Instant?> DecideAllAsync(CancellationToken cancellation)
    {
        Instant? wake = null;
        foreach (var book in shelf.Books)
        {
            var decision = await DecideAsync(book, cancellation);
            if (decision.NextWake is { } next && !(next >= wake)) wake = next;
        }

        return wake;
    }

    private async Task<Decision> DecideAsync(GardenBook book, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var before = store.Read(reader => Remembered.Of(reader, book.Id, now));
        var standing = before.Standing with { Kept = latest.TryGetValue(book.Id, out var last) ? last.Standing.Kept : Kept(book) };
        var decision = desk.Decide(inbox.Ledger, book, standing, before.Jobs, before.Outbox.SentAt, now, watch.Silences(now), reach.Of(book), before.SaidIn);
        var wanted = decision.Wanted.Select(reminder => letters.Write(reminder, decision.Cause, now)).ToList();
        var json = StandingJson.Write(decision.Standing);

        var calendar = CalendarChanges.Next(before.Calendar, book, decision, letters.InstallationId, now);
        var due = Reconciler.Decide(wanted, before.Outbox, now);
        var newPlan = ReferenceEquals(decision.Standing.Kept, standing.Kept) ? null : decision.Standing.Kept;
        var episode = EpisodeRecord.Next(before.Episode, book.Id, decision.Standing.Stage, decision.Peaks, now);
        var newEpisode = ReferenceEquals(episode, before.Episode) ? null : episode;
        if (json != before.Json || due.Count > 0 || calendar != before.Calendar || newPlan is not null || newEpisode is not null)
        {
            var told = new HashSet<string>();
            var enclosed = due.Where(IsWritten).ToDictionary(change => change.Entry.Id, change => enclosures.For(change.Entry, book, decision, calendar, now, told));
            if (told.Count > 0) calendar = CalendarChanges.Tell(calendar, told);
            var changes = await store.WriteAsync(
                transaction =>
                {
                    if (!Standings.TrySave(transaction, book.Id, json, before.Revision)) throw new InvalidOperationException("Two desks decided at once.");
                    if (newEpisode is not null) Episodes.Put(transaction, newEpisode);
                    if (newPlan is not null) KeptPlans.Put(transaction, book.Id, KeptPlanJson.Write(newPlan));
                    if (calendar != before.Calendar) KeptCalendars.Put(transaction, book.Id, calendar.ToJson());
                    var written = Reconciler.Apply(transaction, book.Id, wanted, now);
                    foreach (var change in written) Enclose(transaction, change, enclosed);
                    return written;
                },
                cancellation);
            Report(book, before.Standing, decision, changes, now);
        }

        latest[book.Id] = decision;
        return decision;
    }

    private KeptPlan? Kept(GardenBook book) => store.Read(reader => KeptPlans.Find(reader, book.Id)) is { } json ? KeptPlanJson.Read(json, book) : null;

    /// <summary>Its bytes are new: from here on they stay as they are until it is written again.</summary>
    private static bool IsWritten(OutboxChange change) =>
        change.Reason is ReconcileReason.New or ReconcileReason.Rewritten || (change.Reason == ReconcileReason.WantedAgain && change.Entry.Attempts == 0);

    private static void Enclose(StoreTransaction transaction, OutboxChange change, Dictionary<string, IReadOnlyList<Enclosure>> enclosed)
    {
        if (IsWritten(change)) Enclosures.Put(transaction, change.Entry.Id, enclosed.GetValueOrDefault(change.Entry.Id, []));
        else Enclosures.DropWhereDone(transaction, change.Entry);
    }

    private void Report(GardenBook book, GardenStanding before, Decision decision, IReadOnlyList<OutboxChange> changes, Instant now)
    {
        var stage = decision.Standing.Stage;
        if (stage.Stage != before.Stage.Stage)
        {
            var kind = stage.Stage switch
            {
                Stage.Recheck => "recheck",
                Stage.NothingDue when stage.Reason.Cause == StageCause.TurnedAway => "standdown",
                _ => "stage",
            };
            var english = Speech.English(book.Units);
            journal.Write(new(now, kind, book.Id, stage.Stage, ReasonWords.Sentence(stage.Stage, stage.Reason, english, new Times(book.Zone, now, english)), Key: decision.Cause));
        }

        if (decision.Standing.Announced != before.Announced && decision.Plan is { } plan)
        {
            journal.Write(new(now, "plan", book.Id, stage.Stage, Jobs: [.. plan.Jobs.Select(job => job.Job.Id)]));
        }

        foreach (var (entry, reason) in changes)
        {
            if (reason == ReconcileReason.New) journal.Write(new(now, "reminder", book.Id, stage.Stage, entry.Reason, entry.PersonId, entry.Message.Subject, entry.JobIds, entry.Key));
            if (reason is ReconcileReason.TimeOfUsePassed or ReconcileReason.NewButTooLate) journal.Write(JournalEntry.Missed(entry));
        }
    }
}
