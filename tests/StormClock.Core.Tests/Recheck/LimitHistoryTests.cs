using StormClock.Core.Garden;
using StormClock.Core.Recheck;
using StormClock.Core.Worth;

namespace StormClock.Core.Tests.Recheck;

/// <summary>Beliefs by science.md 5.5 (C); the numbers of one update are in <c>StrengthBeliefTests</c>.</summary>
public class LimitHistoryTests
{
    private static readonly Instant At = Instant.FromUtc(2027, 9, 22, 12, 0);
    private static readonly GardenBook Book = Chair();

    [Theory]
    [InlineData(OutcomeKind.Held, 1)]
    [InlineData(OutcomeKind.Moved, -1)]
    [InlineData(OutcomeKind.Leaning, -1)]
    [InlineData(OutcomeKind.Damaged, -1)]
    [InlineData(OutcomeKind.Lost, -1)]
    public void Of_AStormAtItsLimit_MovesTheLimitItsWay(OutcomeKind kind, int way)
    {
        var before = OrderOfWorry.Of(Book)[0].Gust10MMps!.Value;
        var move = Assert.Single(LimitHistory.Of(Book, [Seen(kind, before)]));
        Assert.Equal(before, move.BeforeGust10MMps, 9);
        Assert.Equal(1, move.Storms);
        Assert.Equal(way, Math.Sign(move.Now.MedianMps - before));
    }

    [Fact]
    public void Of_HeldFarBelowItsLimit_HardlyMovesIt()
    {
        var before = OrderOfWorry.Of(Book)[0].Gust10MMps!.Value;
        Assert.InRange(Assert.Single(LimitHistory.Of(Book, [Seen(OutcomeKind.Held, before / 3)])).Now.MedianMps, before, before * 1.01);
    }

    /// <summary>Tied and untied are two; what was not done or made worse tells nothing of the wind it stands; a gust not known tells nothing either.</summary>
    [Fact]
    public void Of_OutcomesThatTellNothingOfIt_LeaveItOut()
    {
        Outcome[] outcomes =
        [
            Seen(OutcomeKind.Held, 30) with { Done = [JobKind.Tie] },
            Seen(OutcomeKind.NotDone, 30),
            Seen(OutcomeKind.MadeWorse, 30),
            Seen(OutcomeKind.Held, null),
            Seen(OutcomeKind.Held, 30) with { ItemId = "gone" },
        ];
        Assert.Empty(LimitHistory.Of(Book, outcomes));
        Assert.Single(LimitHistory.Of(Book, [Seen(OutcomeKind.Held, 30) with { Done = [JobKind.Pick, JobKind.Soak] }]));
    }

    private static Outcome Seen(OutcomeKind kind, double? gust) => new("chairs", kind, At, "Ada", "", [], gust);

    /// <summary>A garden chair, 5 kg, on a plot by the sea.</summary>
    private static GardenBook Chair()
    {
        var build = ItemBuild.Unknown with { HeightM = 0.9, WidthM = 0.6, DepthM = 0.6, BaseM = 0.5, MassKg = 5, Surface = Surface.Paving, Standing = Standing.Free, Solidity = 0.6 };
        var item = new Item("chairs", "Chairs", "furniture", "plot", 1, 60, [], []) { Shape = ItemShape.Body, Written = build, Build = build };
        return new(
            "g", "Garden", DateTimeZone.Utc, UnitSystem.Metric, false, [], [new("s", "Site", new(29, -89), Terrain.Suburb, new Dictionary<string, int>(), [])],
            [new("plot", "Plot", "s", Exposure.Open)], [item], [], [], WorkLimit.Defaults);
    }
}
