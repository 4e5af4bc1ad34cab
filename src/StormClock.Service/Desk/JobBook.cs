using StormClock.Core;
using StormClock.Core.Acknowledgements;
using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Service.Calendars;
using StormClock.Service.Feeds;
using StormClock.Service.Feeds.Health;
using StormClock.Service.Outbox;
using StormClock.Service.Replies;
using StormClock.Service.Store;
using StormClock.Service.Wakeups;
using StormClock.Service.Web;
using StormClock.Service.Wording;

namespace StormClock.Service.Desk;

/// <summary>What the pages show and take: the jobs behind a link, the answers pressed, a person's calendar, how things stand.</summary>
internal sealed class JobBook(StormStore store, GardenShelf shelf, GardenDesk desk, Inbox inbox, FeedWatch watch, Turns turns, Journal journal, HostPlan plan, AckKeyRing keys, Heartbeat heartbeat, ReplyWatch replies) : IJobBook
{
    public Task<LinkPage?> LookAsync(AckToken token, Instant now)
    {
        if (shelf.Find(token.GardenId) is not { } book) return Task.FromResult<LinkPage?>(null);
        var person = book.People.FirstOrDefault(person => person.Id == token.PersonId);
        var work = token.Purpose == AckPurpose.Indoors ? [] : WorkOf(token, book);
        if (person is null || (work.Count == 0 && token.Purpose != AckPurpose.Indoors)) return Task.FromResult<LinkPage?>(null);

        var states = store.Read(reader => JobStates.OfEpisode(reader, token.GardenId, token.EpisodeId)).ToDictionary(state => state.JobId);
        var pressed = store.Read(reader => Presses.OfToken(reader, PressId(token)));
        var decision = desk.Latest.GetValueOrDefault(book.Id);
        var standing = decision?.Standing.Stage ?? StageStanding.Calm(now);
        var jobs = work.Select(job => Show(job, states.GetValueOrDefault(job.Token), decision)).ToList();
        return Task.FromResult<LinkPage?>(new(
            book.Name,
            person.Name,
            book.Zone,
            Speech.Of(person, book.Units),
            standing.Stage,
            decision?.Leave ?? false,
            decision?.LeaveBy,
            MovedOn(token, standing, jobs, decision),
            jobs,
            Cautions(jobs, token.Purpose),
            token.Purpose == AckPurpose.Indoors && pressed.Count > 0 ? pressed[0].At : null));
    }

    public async Task AnswerAsync(AckToken token, JobAnswer answer, Instant now)
    {
        if (shelf.Find(token.GardenId) is not { } book) return;
        var by = book.People.FirstOrDefault(person => person.Id == token.PersonId)?.Name ?? token.PersonId;
        var progress = answer switch
        {
            JobAnswer.Done => JobProgress.Done,
            JobAnswer.Cannot => JobProgress.Cannot,
            _ => JobProgress.Later,
        };
        var work = token.Purpose == AckPurpose.Indoors ? [] : WorkOf(token, book);
        var changed = await store.WriteAsync(transaction =>
        {
            Presses.Add(transaction, new(PressId(token), answer.ToString(), now, by));
            var before = JobStates.OfEpisode(transaction, token.GardenId, token.EpisodeId).ToDictionary(state => state.JobId, state => state.Progress);
            var news = work.Where(job => before.GetValueOrDefault(job.Token) != progress).Select(job => job.Token).ToList();
            foreach (var job in news) JobStates.Put(transaction, token.GardenId, token.EpisodeId, new(job, progress, now, by));
            return news;
        });
        if (changed.Count == 0) return;
        journal.Write(new(now, "done", book.Id, Reason: answer.ToString(), To: by, Jobs: changed));
        await turns.TakeAsync(listen: false, CancellationToken.None);
    }

    public Task<NowPage> NowAsync(Instant now)
    {
        var gardens = shelf.Books.Select(book => (book, decision: desk.Latest.GetValueOrDefault(book.Id)))
            .Where(pair => pair.decision is not null)
            .Select(pair => Show(pair.book, pair.decision!, now))
            .ToList();
        var messages = plan.Channel is Delivery.Email.EmlChannel
            ? shelf.Books.SelectMany(book => store.Read(reader => OutboxTable.OfGarden(reader, book.Id)).Select(entry => (book, entry)))
                .Where(pair => pair.entry is { State: OutboxState.Sent, Channel: Reach.Mail })
                .OrderByDescending(pair => pair.entry.Settled)
                .Take(20)
                .Select(pair => new NowMessage(Delivery.Email.EmlChannel.FileName(pair.entry.Message), pair.entry.Written, pair.book.Zone, pair.entry.Message.ToName, pair.entry.Message.Subject, pair.entry.Message.Text))
                .ToList()
            : [];
        return Task.FromResult(new NowPage(gardens, Troubles(now), messages));
    }

    public Task<string?> CalendarAsync(AckToken token)
    {
        if (shelf.Find(token.GardenId) is not { } book || book.People.FirstOrDefault(person => person.Id == token.PersonId) is not { } person) return Task.FromResult<string?>(null);
        var kept = store.Read(reader => KeptCalendars.Find(reader, book.Id));
        var calendar = kept is null ? GardenCalendar.Empty : GardenCalendar.FromJson(kept);
        return Task.FromResult<string?>(IcsForm.ForFeed(calendar.Of(token.PersonId), book.Name, book.Zone, Speech.Of(person, book.Units)));
    }

    public Task<HealthNow> HealthAsync(Instant now)
    {
        var outbox = store.Read(reader => OutboxHealth.Of(reader, now));
        var newest = inbox.Ledger.NewestContent(now);
        var sending = !(outbox.OldestUnsentAge > Duration.FromMinutes(30));
        var turning = heartbeat.Last is { } last && now - last < Duration.FromMinutes(10);
        return Task.FromResult(new HealthNow(
            sending && turning && newest is not null && inbox.Troubles.Count == 0 && SourceHealth.IsGood(watch, desk.IsStorm, now) && replies.Trouble(now) is null,
            outbox.OldestUnsentAge,
            [new("all sources", newest), .. SourceHealth.Of(watch, now)])
        {
            Channels = outbox.Channels,
            Replies = replies.Health,
        });
    }

    /// <summary>A link for a list is good for the jobs of the message that carried it, whatever the plan says since.</summary>
    private List<BriefJob> WorkOf(AckToken token, GardenBook book)
    {
        IEnumerable<string> ids = token.Purpose == AckPurpose.Job
            ? [token.Subject]
            : store.Read(reader => OutboxTable.OfGarden(reader, token.GardenId))
                .FirstOrDefault(entry => entry.PersonId == token.PersonId && AckList.Hash(entry.JobIds) == token.Subject)?.JobIds ?? [];
        return [.. ids.Select(id => BriefLines.Find(book, id)).OfType<BriefJob>()];
    }

    private static LinkJob Show(BriefJob job, JobState? state, Decision? decision)
    {
        var planned = decision?.Plan?.Jobs.FirstOrDefault(planned => planned.Job.Id == job.Token);
        var shown = planned is null ? job : job with { Start = planned.Start, StartBy = planned.StartBy };
        return new(shown, state?.Progress ?? JobProgress.Open, state?.By, state?.At);
    }

    private NowGarden Show(GardenBook book, Decision decision, Instant now)
    {
        var stage = decision.Standing.Stage;
        var ground = decision.Plan?.WorkStops[WorkClass.Ground];
        return new(
            book.Name, book.Zone, Speech.Of(book), stage.Stage, stage.Reason, decision.Leave, decision.LeaveBy,
            ground?.Earliest, ground?.Likely,
            [.. (decision.Plan?.Jobs ?? []).Take(8).Select(job => new NowJob(Show(BriefLines.Line(book, job.Job), null, decision).Job, MarkToken(book, stage.EpisodeId, job.Job, now)))])
        {
            Picture = decision.Plan is { } work ? new(book, work, now, decision.LeaveBy, Speech.Of(book)) : null,
            Calendars = plan.PagesAddress is null ? [.. book.People.Select(person => new NowCalendar(person.Name, CalendarLinks.Path(book.Id, person.Id, keys.Newest)))] : [],
        };
    }

    /// <summary>Where messages carry no links, the page near the box marks work in the gardener's name.</summary>
    private string? MarkToken(GardenBook book, string? episodeId, Job job, Instant now)
    {
        if (plan.PagesAddress is not null || episodeId is null) return null;
        var gardener = book.People.FirstOrDefault(person => person.Role == PersonRole.Gardener) ?? book.People[0];
        return new AckToken(AckPurpose.Job, book.Id, episodeId, gardener.Id, job.Id, now + LinkMaker.Life).Sign(keys.Newest);
    }

    private static bool MovedOn(AckToken token, StageStanding standing, IReadOnlyList<LinkJob> jobs, Decision? decision)
    {
        if (token.EpisodeId != standing.EpisodeId) return true;
        return decision?.Plan is { } plan && jobs.Any(job => job.Progress == JobProgress.Open && plan.LeftOut.Any(left => left.Job.Id == job.Job.Token));
    }

    private static IReadOnlyList<Caution> Cautions(List<LinkJob> jobs, AckPurpose purpose) =>
        CautionsFor.Work([.. jobs.Select(job => job.Job)], after: purpose == AckPurpose.Recheck);

    private List<string> Troubles(Instant now) => [.. Silence(now), .. SourceHealth.Troubles(watch, now), .. inbox.Troubles.Select(trouble => $"Could not be read: {trouble}"), .. Parked(now), .. replies.Trouble(now) is { } mailbox ? [mailbox] : Array.Empty<string>()];

    private IEnumerable<string> Parked(Instant now) => store.Read(reader => OutboxHealth.Of(reader, now)).Channels
        .Where(channel => channel.Parked > 0)
        .Select(channel => $"Refused for good by {ChannelNames.Words(channel.Name)} in the last 7 days: {channel.Parked} {(channel.Parked == 1 ? "message" : "messages")}. The log says why; tell those people otherwise.");

    private List<string> Silence(Instant now) =>
        inbox.Ledger.NewestContent(now) is { } newest
            ? now - newest > Duration.FromHours(9) ? [$"Nothing new has been heard since {newest:uuuu-MM-dd HH:mm} UTC. Silence is no good news: look at the official sources."] : []
            : ["Nothing has been heard from any source yet. Silence is no good news: look at the official sources."];

    /// <summary>The same link for the same thing, however often it was written.</summary>
    private static string PressId(AckToken token) => Fingerprint.Of(token.Purpose.ToString(), token.GardenId, token.EpisodeId, token.PersonId, token.Subject);
}
