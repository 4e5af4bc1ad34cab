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
using StormClock.Service.Visits;
using StormClock.Service.Wakeups;
using StormClock.Service.Web;
using StormClock.Service.Wording;

namespace StormClock.Service.Desk;

/// <summary>What the pages show and take: the jobs behind a link, the answers pressed, a person's calendar, how things stand.</summary>
internal sealed class JobBook(StormStore store, GardenShelf shelf, GardenDesk desk, Inbox inbox, FeedWatch watch, Turns turns, Journal journal, HostPlan plan, AckKeyRing keys, Heartbeat heartbeat, ReplyWatch replies) : IJobBook, IHostedService
{
    private static readonly TimeSpan LongestHold = TimeSpan.FromSeconds(3);

    /// <summary>Turns that follow from answers and may still be under way.</summary>
    private Task following = Task.CompletedTask;

    public Task<LinkPage?> LookAsync(AckToken token, Instant now)
    {
        if (shelf.Find(token.GardenId) is not { } book) return Task.FromResult<LinkPage?>(null);
        var person = book.People.FirstOrDefault(person => person.Id == token.PersonId);
        var work = token.Purpose == AckPurpose.Indoors ? [] : WorkOf(token, book);
        if (person is null || (work.Count == 0 && token.Purpose != AckPurpose.Indoors)) return Task.FromResult<LinkPage?>(null);

        var states = store.Read(reader => JobStates.OfEpisode(reader, token.GardenId, token.EpisodeId)).ToDictionary(state => state.JobId);
        var decision = desk.Latest.GetValueOrDefault(book.Id);
        var standing = decision?.Standing.Stage ?? StageStanding.Calm(now);
        var jobs = work.Select(job => Show(job, states.GetValueOrDefault(job.Token), decision)).ToList();
        var people = token.Purpose == AckPurpose.Indoors && standing.EpisodeId == token.EpisodeId ? People(book, standing, _ => null) : [];
        return Task.FromResult<LinkPage?>(new(
            book.Name,
            person.Name,
            book.Zone,
            Speech.Of(person, book.Units),
            standing.Stage,
            decision?.Leave ?? false,
            decision?.LeaveBy,
            MovedOn(token, standing, jobs),
            jobs,
            Cautions(jobs, token.Purpose),
            people.Where(pair => pair.Person.Id == person.Id).Select(pair => pair.Now.Since).FirstOrDefault())
        {
            EpisodeOver = decision is not null && token.EpisodeId != standing.EpisodeId,
            CanTakeBack = work.Any(job => states.TryGetValue(job.Token, out var state) && TakenBack(state, person.Name, now) is not null),
            Others = [.. people.Where(pair => pair.Person.Id != person.Id).Select(pair => pair.Now)],
        });
    }

    public async Task AnswerAsync(AckToken token, JobAnswer answer, Instant now)
    {
        if (shelf.Find(token.GardenId) is not { } book) return;
        var by = book.People.FirstOrDefault(person => person.Id == token.PersonId)?.Name ?? token.PersonId;
        var work = token.Purpose == AckPurpose.Indoors ? [] : WorkOf(token, book);
        var (isIn, changed) = await store.WriteAsync(transaction =>
        {
            Presses.Add(transaction, new(PressId(token), answer.ToString(), now, by));
            if (token.Purpose == AckPurpose.Indoors) return (SayIn(transaction, token, now), []);

            var states = JobStates.OfEpisode(transaction, token.GardenId, token.EpisodeId).ToDictionary(state => state.JobId);
            var news = work.Select(job => Next(job.Token, states.GetValueOrDefault(job.Token), answer, by, now)).OfType<JobState>().ToList();
            foreach (var state in news) JobStates.Put(transaction, token.GardenId, token.EpisodeId, state);
            return (false, news.Select(state => state.JobId).ToList());
        });
        if (!isIn && changed.Count == 0) return;
        journal.Write(new(now, "done", book.Id, Reason: isIn ? JournalEntry.In : answer.ToString(), To: by, Jobs: changed));
        await FollowAsync(turns.TakeAsync(listen: false, CancellationToken.None));
    }

    /// <summary>
    /// The page shows what follows from an answer, as a rule at once. The answer is kept already, so that a mail server which takes its time
    /// does not hold whoever pressed; a rehearsal, whose clock stands still meanwhile, waits for it all.
    /// </summary>
    private Task FollowAsync(Task turn)
    {
        following = Task.WhenAll(following, turn);
        return plan.Practice ? turn : Task.WhenAny(turn, Task.Delay(LongestHold, TimeProvider.System));
    }

    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <summary>Lets turns end that nobody waits for any more, before what they use is gone.</summary>
    public Task StopAsync(CancellationToken cancellationToken) => Task.WhenAny(following, Task.Delay(LongestHold, TimeProvider.System, cancellationToken));

    /// <summary>True when it is news: the first word since the garden was closed.</summary>
    private bool SayIn(StoreTransaction transaction, AckToken token, Instant now)
    {
        var closed = desk.Latest.GetValueOrDefault(token.GardenId)?.Standing.Stage;
        var said = Indoors.OfEpisode(transaction, token.GardenId, token.EpisodeId);
        if (said.TryGetValue(token.PersonId, out var at) && at >= closed?.Since) return false;
        Indoors.Put(transaction, token.GardenId, token.EpisodeId, token.PersonId, now);
        return true;
    }

    /// <summary>What an answer makes of a job; null when it is no news.</summary>
    private static JobState? Next(string jobId, JobState? known, JobAnswer answer, string by, Instant now)
    {
        if (answer == JobAnswer.TakeBack) return known is null ? null : TakenBack(known, by, now);

        var (progress, why) = answer switch
        {
            JobAnswer.Done => (JobProgress.Done, (CannotWhy?)null),
            JobAnswer.Later => (JobProgress.Later, null),
            JobAnswer.NoTime => (JobProgress.Cannot, CannotWhy.NoTime),
            JobAnswer.NoMaterial => (JobProgress.Cannot, CannotWhy.NoMaterial),
            JobAnswer.NeedsPerson => (JobProgress.Cannot, CannotWhy.NeedsPerson),
            _ => (JobProgress.Cannot, null),
        };
        var isNews = (known?.Progress ?? JobProgress.Open, known?.Why) != (progress, why);
        return isNews ? new(jobId, progress, now, by, why) { Before = known is null ? null : known with { Before = null } } : null;
    }

    /// <summary>What stands again when a person takes back what they said; null when somebody else said it, or there is nothing to take back.</summary>
    private static JobState? TakenBack(JobState said, string by, Instant now) =>
        said.By != by || said.Progress == JobProgress.Open ? null : said.Before ?? new(said.JobId, JobProgress.Open, now, by);

    public Task<NowPage> NowAsync(Visitor visitor, Instant now)
    {
        var gardens = shelf.Books.Select(book => (book, decision: desk.Latest.GetValueOrDefault(book.Id)))
            .Where(pair => pair.decision is not null)
            .Select(pair => Show(pair.book, pair.decision!, now) with { Door = visitor.MayEnter(GardenRoom.Now, pair.book, shelf.Books) ? pair.book.Id : null })
            .ToList();
        var messages = plan.Channel is Delivery.Email.EmlChannel
            ? shelf.Books.SelectMany(book => store.Read(reader => OutboxTable.OfGarden(reader, book.Id)).Select(entry => (book, entry)))
                .Where(pair => pair.entry is { State: OutboxState.Sent, Channel: Reach.Mail })
                .OrderByDescending(pair => pair.entry.Settled)
                .Take(20)
                .Select(pair => new NowMessage(Delivery.Email.EmlChannel.FileName(pair.entry.Message), pair.entry.Written, pair.book.Zone, pair.entry.Message.ToName, pair.entry.Message.Subject, pair.entry.Message.Text))
                .ToList()
            : [];
        return Task.FromResult(new NowPage(gardens, Troubles(now), messages)
        {
            IsForKeeper = visitor.IsKeeper(shelf.Books),
            IsStarting = gardens.Count < shelf.Books.Count,
            Testable = plan.MaySendTests ? [.. shelf.Books.SelectMany(book => book.People.Where(person => person.Email is not null).Select(person => new NowTestable($"{book.Id}/{person.Id}", $"{person.Name}, {person.Email}")))] : [],
        });
    }

    public async Task<TestSent?> SendTestAsync(string gardenId, string personId, Instant now)
    {
        if (shelf.Find(gardenId)?.People.FirstOrDefault(person => person.Id == personId) is not { Email: { } address } person) return null;
        var outcome = await turns.BetweenAsync(
            async () =>
            {
                var sent = await plan.Channel.SendAsync(Delivery.TestMessage.To(person, null, now), CancellationToken.None);
                await plan.Channel.RestAsync();
                return sent;
            },
            CancellationToken.None);
        return new(outcome.Result == Delivery.DeliveryResult.Delivered, address, outcome.Detail);
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
        var turning = heartbeat.Last is { } last && now - last < Duration.FromMinutes(10);
        return Task.FromResult(new HealthNow(
            !outbox.IsStuck && turning && newest is not null && inbox.Troubles.Count == 0 && SourceHealth.IsGood(watch, desk.IsStorm, now) && replies.Trouble(now) is null,
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
        return new(shown, state?.Progress ?? JobProgress.Open, state?.By, state?.At, state?.Why)
        {
            LeftOut = decision?.Plan is { } plan ? plan.LeftOut.Concat(plan.BetterLeft).FirstOrDefault(left => left.Job.Id == job.Token)?.Why : null,
        };
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
            People = stage.Stage == Stage.GardenClosed && !decision.Leave ? [.. People(book, stage, person => InToken(book, stage.EpisodeId, person, now)).Select(pair => pair.Now)] : [],
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

    /// <summary>The same for saying that somebody is in.</summary>
    private string? InToken(GardenBook book, string? episodeId, Person person, Instant now) =>
        plan.PagesAddress is not null || episodeId is null ? null : new AckToken(AckPurpose.Indoors, book.Id, episodeId, person.Id, "", now + LinkMaker.Life).Sign(keys.Newest);

    /// <summary>Everybody who works, with when they said "I am in" since the garden was closed.</summary>
    private IReadOnlyList<(Person Person, PersonNow Now)> People(GardenBook book, StageStanding closed, Func<Person, string?> token)
    {
        var said = store.Read(reader => Indoors.OfEpisode(reader, book.Id, closed.EpisodeId!));
        return
        [
            .. book.People.Where(person => person.Role != PersonRole.Keeper || said.ContainsKey(person.Id))
                .Select(person => (person, new PersonNow(person.Name, said.TryGetValue(person.Id, out var at) && at >= closed.Since ? at : null, token(person)))),
        ];
    }

    private static bool MovedOn(AckToken token, StageStanding standing, IReadOnlyList<LinkJob> jobs)
    {
        if (token.EpisodeId != standing.EpisodeId) return true;
        return jobs.Any(job => job.Progress == JobProgress.Open && job.LeftOut is not null);
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
