using StormClock.Service.Visits;
using StormClock.Core.Acknowledgements;
using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Service.Tests.Messages;
using StormClock.Service.Web;

namespace StormClock.Service.Tests.Web;

/// <summary>Shows invented pages and remembers every answer.</summary>
internal sealed class FakeBook : IJobBook
{
    public List<(AckToken Token, JobAnswer Answer)> Answers { get; } = [];

    public Func<LinkPage, LinkPage> Change { get; set; } = page => page;

    public bool Forgets { get; set; }

    public NowPage Now { get; set; } = new([], [], []);

    public HealthNow Health { get; set; } = new(true, null, []);

    public Task<LinkPage?> LookAsync(AckToken token, Instant now)
    {
        if (Forgets) return Task.FromResult<LinkPage?>(null);

        var zone = QuayEnd.MainWork.Zone;
        IReadOnlyList<BriefJob> jobs = token.Purpose switch
        {
            AckPurpose.Job => [QuayEnd.Lemon],
            AckPurpose.Indoors => [],
            _ => [QuayEnd.Lemon, QuayEnd.Beans],
        };
        var last = Answers.Count > 0 ? Answers[^1].Answer : (JobAnswer?)null;
        var page = new LinkPage(
            "Quay End", "Ada", zone, Speeches.Us, Stage.MainWork, false, null, false,
            [.. jobs.Select(job => new LinkJob(job, Progress(last), last is null ? null : "Ada", last is null ? null : now, Why(last)))],
            [Caution.OfficialOrders, Caution.Lifting],
            token.Purpose == AckPurpose.Indoors && last is not null ? now : null);
        return Task.FromResult<LinkPage?>(Change(page));
    }

    public Task AnswerAsync(AckToken token, JobAnswer answer, Instant now)
    {
        Answers.Add((token, answer));
        return Task.CompletedTask;
    }

    public List<string> Tests { get; } = [];

    public Task<TestSent?> SendTestAsync(string gardenId, string personId, Instant now)
    {
        Tests.Add($"{gardenId}/{personId}");
        return Task.FromResult<TestSent?>(new(true, "bo@garden.example", "taken"));
    }

    public Task<NowPage> NowAsync(Visitor visitor, Instant now) => Task.FromResult(Now);

    public Func<AckToken, string?> Calendar { get; set; } = _ => null;

    public Task<string?> CalendarAsync(AckToken token) => Task.FromResult(Calendar(token));

    public Task<HealthNow> HealthAsync(Instant now) => Task.FromResult(Health);

    private static CannotWhy? Why(JobAnswer? answer) => answer switch
    {
        JobAnswer.NoTime => CannotWhy.NoTime,
        JobAnswer.NoMaterial => CannotWhy.NoMaterial,
        JobAnswer.NeedsPerson => CannotWhy.NeedsPerson,
        _ => null,
    };

    private static JobProgress Progress(JobAnswer? answer) => answer switch
    {
        null => JobProgress.Open,
        JobAnswer.TakeBack => JobProgress.Open,
        JobAnswer.Done => JobProgress.Done,
        JobAnswer.Later => JobProgress.Later,
        _ => JobProgress.Cannot,
    };
}
