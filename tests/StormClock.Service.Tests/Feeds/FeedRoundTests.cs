using Microsoft.Extensions.Time.Testing;
using StormClock.Service.Feeds;

namespace StormClock.Service.Tests.Feeds;

public class FeedRoundTests
{
    private static readonly FeedAnswer Nothing = new([]);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private readonly FakeTimeProvider time = new();

    /// <summary>Minutes, looks in calm, looks in a storm; turns come every minute.</summary>
    [Theory]
    [InlineData(29, 1, 3)]
    [InlineData(31, 2, 4)]
    [InlineData(121, 5, 13)]
    public async Task Ask_EveryMinute_LooksAtTheStagesPace(int minutes, int calm, int storm)
    {
        var (quiet, windy) = (new MadeFeed("a", _ => Task.FromResult(Nothing)), new MadeFeed("a", _ => Task.FromResult(Nothing)));
        using var inCalm = new FeedRound([quiet], time);
        using var inStorm = new FeedRound([windy], time);

        for (var i = 0; i < minutes; i++)
        {
            await inCalm.AskAsync(false, Cancel);
            await inStorm.AskAsync(true, Cancel);
            time.Advance(TimeSpan.FromMinutes(1));
        }

        Assert.Equal((calm, storm), (quiet.Looks, windy.Looks));
    }

    /// <summary>A turn that comes a moment before its minute must not put a look off by a whole turn.</summary>
    [Fact]
    public async Task Ask_TurnsComeNotQuiteToTheMinute_KeepsThePace()
    {
        var feed = new MadeFeed("a", _ => Task.FromResult(Nothing));
        using var round = new FeedRound([feed], time);
        for (var i = 0; i < 31; i++)
        {
            await round.AskAsync(true, Cancel);
            time.Advance(TimeSpan.FromSeconds(59.99));
        }

        Assert.Equal(4, feed.Looks);
    }

    [Fact]
    public async Task Ask_ClockSetBack_DoesNotWaitUntilItHasComeThereAgain()
    {
        var feed = new MadeFeed("a", _ => Task.FromResult(Nothing));
        using var round = new FeedRound([feed], time);
        await round.AskAsync(true, Cancel);
        time.AdjustTime(time.GetUtcNow().AddHours(-2));
        await round.AskAsync(true, Cancel);
        Assert.Equal(2, feed.Looks);
        await round.AskAsync(true, Cancel);
        Assert.Equal(2, feed.Looks);
    }

    [Fact]
    public async Task Ask_StormRises_DoesNotWaitForTheCalmPaceToEnd()
    {
        var feed = new MadeFeed("a", _ => Task.FromResult(Nothing));
        using var round = new FeedRound([feed], time);
        await round.AskAsync(false, Cancel);
        time.Advance(TimeSpan.FromMinutes(11));
        await round.AskAsync(false, Cancel);
        Assert.Equal(1, feed.Looks);
        await round.AskAsync(true, Cancel);
        Assert.Equal(2, feed.Looks);
    }

    [Fact]
    public async Task Ask_SourceThatAskedForAPause_IsLeftAloneUntilThen()
    {
        var feed = new MadeFeed("a", _ => Task.FromResult(new FeedAnswer([], "busy") { NotBefore = Instant.FromDateTimeOffset(time.GetUtcNow()) + Duration.FromMinutes(40) }));
        using var round = new FeedRound([feed], time);
        for (var i = 0; i < 40; i++)
        {
            await round.AskAsync(true, Cancel);
            time.Advance(TimeSpan.FromMinutes(1));
        }

        Assert.Equal(1, feed.Looks);
        await round.AskAsync(true, Cancel);
        Assert.Equal(2, feed.Looks);
    }

    /// <summary>The slow one's answer is not lost; it is taken at the next turn.</summary>
    [Fact]
    public async Task Ask_OneIsSlow_OthersAreNotHeldUpAndItsAnswerIsTakenLater()
    {
        var slow = new TaskCompletionSource<FeedAnswer>();
        var (first, second) = (new MadeFeed("slow", _ => slow.Task), new MadeFeed("quick", _ => Task.FromResult(Nothing)));
        using var round = new FeedRound([first, second], time);

        var heard = new List<string>();
        while (heard.Count == 0)
        {
            var turn = round.AskAsync(true, Cancel);
            await second.Begun.Task;
            time.Advance(TimeSpan.FromSeconds(6));

            heard.AddRange((await turn).Select(answer => answer.Feed.Name));
        }

        Assert.Equal(["quick"], heard);
        slow.SetResult(new([new("late", ReadOnlyMemory<byte>.Empty)]));
        await slow.Task;
        IReadOnlyList<(IFeed Feed, FeedAnswer Answer)> next = [];
        while (next.Count == 0) next = await round.AskAsync(true, Cancel);
        Assert.Equal(("slow", "late"), (next[0].Feed.Name, next[0].Answer.Messages[0].Name));
        Assert.Equal(1, first.Looks);
    }

    [Fact(Timeout = 60_000)]
    public async Task Ask_SourceThatNeverComesBack_FailsInItsOwnTimeAndIsNotAskedTwiceAtOnce()
    {
        var feed = new MadeFeed("deaf", _ => new TaskCompletionSource<FeedAnswer>().Task);
        using var round = new FeedRound([feed], time);
        var troubles = new List<string?>();
        while (troubles.Count < 2)
        {
            var turn = round.AskAsync(true, Cancel);
            await feed.Begun.Task.WaitAsync(TestContext.Current.CancellationToken);
            time.Advance(TimeSpan.FromMinutes(4));

            troubles.AddRange((await turn).Select(heard => heard.Answer.Trouble));
            time.Advance(TimeSpan.FromMinutes(5));
            await Task.Delay(TimeSpan.FromMilliseconds(5), TimeProvider.System, TestContext.Current.CancellationToken);
        }

        Assert.Equal(["it did not answer in time", "the last look at it has not come back"], troubles);
        Assert.Equal(1, feed.Looks);
    }

    [Fact]
    public async Task Ask_SourceThatThrows_IsTroubleAndNobodyElseNotices()
    {
        using var round = new FeedRound([new MadeFeed("broken", _ => throw new InvalidOperationException("a slip")), new MadeFeed("well", _ => Task.FromResult(Nothing))], time);

        var heard = await round.AskAsync(true, Cancel);

        Assert.Equal([("broken", "the look at it failed: a slip"), ("well", null)], heard.Select(answer => (answer.Feed.Name, answer.Answer.Trouble)));
    }
}
