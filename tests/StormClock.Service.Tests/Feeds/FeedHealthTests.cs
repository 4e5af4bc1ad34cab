using CsCheck;
using StormClock.Service.Feeds;
using StormClock.Service.Feeds.Health;
using StormClock.Service.Store;

namespace StormClock.Service.Tests.Feeds;

public class FeedHealthTests
{
    private static readonly Instant Start = Instant.FromUtc(2027, 9, 12, 10, 0);

    private static Instant At(double hours) => Start + Duration.FromHours(hours);

    [Theory]
    [InlineData(10, 1)]
    [InlineData(30, 1)]
    [InlineData(45, 1.5)]
    public void DeafAfter_ByThePace_IsTwoLooksOrAnHour(int stormMinutes, double hours) =>
        Assert.Equal(Duration.FromHours(hours), new FeedPace(Duration.FromMinutes(60), Duration.FromMinutes(stormMinutes)).DeafAfter);

    [Fact]
    public void IsDeaf_OneFailedLookAfterALongPause_IsNotYet()
    {
        var limit = Duration.FromHours(1);
        var health = new FeedHealth("a", Start).Heard(Start, true, "1", null, null);

        Assert.False(health.Failed(At(3), "x").IsDeaf(At(3), limit));
        Assert.True(health.Failed(At(3), "x").Failed(At(3.2), "x").IsDeaf(At(3.2), limit));
        Assert.False(health.Failed(At(0.2), "x").Failed(At(0.9), "x").IsDeaf(At(0.9), limit));
    }

    [Fact]
    public void Heard_AfterFailures_RemembersTheSpellOnce()
    {
        var deaf = new FeedHealth("a", Start).Heard(Start, true, "1", null, null).Failed(At(1), "x").Failed(At(2), "y");
        var again = deaf.Heard(At(3), false, "1", null, null);

        Assert.Equal((Start, "y", At(2)), (deaf.Since, deaf.LastError, deaf.LastErrorAt));
        Assert.Equal(new DeafSpell(Start, At(3)), again.LastSpell);
        Assert.Equal(again.LastSpell, again.Heard(At(4), false, null, null, null).LastSpell);
        Assert.Equal(0, again.Failures);
    }

    /// <summary>It answers every time, and says nothing new.</summary>
    [Fact]
    public void IsStale_GoodAnswersWithOldContent_IsTold()
    {
        var health = new FeedHealth("a", Start).Heard(Start, true, "1", At(-2), null);
        for (var i = 1; i <= 8; i++) health = health.Heard(At(i), false, "1", null, null);

        Assert.False(health.IsStale(At(7), Duration.FromHours(9)));
        Assert.True(health.IsStale(At(7.1), Duration.FromHours(9)));
        Assert.False(health.IsStale(At(1000), null));
        Assert.False(health.Heard(At(8), true, "2", At(7.5), null).IsStale(At(16), Duration.FromHours(9)));
    }

    [Fact]
    public void NewestIssued_OlderMessageComesLater_StaysTheNewest() =>
        Assert.Equal(At(5), new FeedHealth("a", Start).Heard(At(6), true, null, At(5), null).Heard(At(7), true, null, At(1), null).NewestIssued);

    [Fact]
    public async Task Watch_AfterARestart_KnowsWhatItKnew()
    {
        var trouble = false;
        var feed = new MadeFeed("a", _ => Task.FromResult(trouble ? new FeedAnswer([], "gone") : new([new("m", Listener.Message(1))])));
        using var listener = new Listener(_ => [feed]);
        await listener.ListenAsync();
        trouble = true;
        for (var i = 0; i < 9; i++)
        {
            listener.Time.Advance(TimeSpan.FromMinutes(10));
            await listener.ListenAsync();
        }

        var restarted = new FeedWatch(listener.Store, [feed]);

        Assert.Equal(listener.Health("a"), Assert.Single(restarted.All).Health);
        Assert.Equal(9, listener.Health("a").Failures);
        Assert.Equal(("a", listener.Health("a").LastGood, null), Assert.Single(restarted.Silences(listener.Now)) is var silence ? (silence.Source, (Instant?)silence.Since, silence.Again) : default);
    }

    [Fact]
    public async Task Watch_StaleAnswers_AreGoodAnswersWithOldContent()
    {
        using var listener = new Listener(_ => [new MadeFeed("a", _ => Task.FromResult(new FeedAnswer([new("m", Listener.Message(1))]) { ContentMark = "same" }))]);
        await listener.ListenAsync();
        var first = listener.Now;
        for (var i = 0; i < 60; i++)
        {
            listener.Time.Advance(TimeSpan.FromMinutes(10));
            await listener.ListenAsync();
        }

        var health = listener.Health("a");
        Assert.Equal((0, listener.Now, first), (health.Failures, health.LastGood, health.LastChange));
        Assert.Single(listener.Heard);
    }

    private static readonly Gen<Instant?> Time = Gen.Long[0, 4_000_000_000].Select(seconds => seconds % 5 == 0 ? (Instant?)null : Instant.FromUnixTimeSeconds(seconds));

    [Fact]
    public void Stored_AnyValues_ComeBackEqual()
    {
        using var listener = new Listener(_ => []);
        Gen.Select(Gen.String[Gen.Char['a', 'z'], 0, 8], Gen.Int[0, 9], Time, Time, Time, Time, Gen.Bool).Sample(
            (name, failures, one, two, three, four, spell) =>
            {
                var health = new FeedHealth(name, Start)
                {
                    Failures = failures, LastGood = one, LastChange = two, NewestIssued = three, LastErrorAt = four, LastError = spell ? name : null, ContentMark = spell ? null : name, LastSpell = spell ? new(Start, At(2)) : null,
                };
                listener.Store.WriteAsync(transaction => FeedStates.Put(transaction, health), TestContext.Current.CancellationToken).GetAwaiter().GetResult();
                Assert.Contains(health, listener.Store.Read(FeedStates.All));
            },
            iter: 50,
            threads: 1);
    }
}
