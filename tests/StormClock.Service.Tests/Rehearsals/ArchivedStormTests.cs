using StormClock.Core.Stages;
using StormClock.Service.Rehearsal;

namespace StormClock.Service.Tests.Rehearsals;

/// <summary>
/// Archived storms through the real host and a garden book, held against what really happened. Advisories as issued by the
/// US National Hurricane Center, outcome from its best track; both lie beside the repository.
/// </summary>
public class ArchivedStormTests
{
    [Theory]
    [InlineData("al092022-ian", "AL092022", 26.64, -81.87)]
    [InlineData("al102023-idalia", "AL102023", 29.67, -83.39)]
    [InlineData("al172022-nicole", "AL172022", 27.2, -80.2)]
    [InlineData("al282020-zeta", "AL282020", 29.95, -90.07)]
    public async Task Storm_ThatCame_IsPreparedForInTimeAndRechecked(string folder, string stormId, double latDeg, double lonDeg)
    {
        var gales = BestTrack.Gales(stormId, latDeg, lonDeg);
        var storm = await Rehearsed.ArchiveAsync(folder, latDeg, lonDeg);

        var firstHeard = storm.Advisories[0].Issued;
        var lookOverBy = Instant.Max(gales[0] - Duration.FromHours(48), firstHeard);
        Assert.True(storm.First(Stage.LookOver) <= lookOverBy, $"Look over at {storm.First(Stage.LookOver)}, wanted by {lookOverBy}");
        Assert.True(storm.First(Stage.MainWork) <= gales[0] - Duration.FromHours(24), $"Main work at {storm.First(Stage.MainWork)}, 34 kt at {gales[0]}");
        Assert.True(storm.First(Stage.GardenClosed) <= gales[0], $"closed at {storm.First(Stage.GardenClosed)}, 34 kt at {gales[0]}");

        var closed = storm.First(Stage.GardenClosed)!.Value;
        var recheck = storm.FirstOf("recheck")!.Value;
        Assert.True(recheck > gales[^1], $"recheck at {recheck}, 34 kt until {gales[^1]}");
        Assert.Contains(storm.Sent, sent => sent.Reason == "Recheck" && sent.At >= recheck);
        Assert.DoesNotContain(storm.Sent, sent => sent.At >= closed && sent.At < recheck && sent.Jobs?.Count > 0);
        Assert.DoesNotContain(storm.Sent, sent => sent.At >= closed && (sent.Reason is "StageChanged" or "WorkDay" or "OrderChanged") && sent.Jobs?.Count > 0);
        AssertSentOnce(storm);
    }

    /// <summary>HURDAT2 by hand: the first quarter of an hour of 34 kt at each place, so that the outcome reader is held too.</summary>
    [Theory]
    [InlineData("AL092022", 26.64, -81.87, "2022-09-28T06:15:00Z")]
    [InlineData("AL102023", 29.67, -83.39, "2023-08-30T06:00:00Z")]
    [InlineData("AL172022", 27.2, -80.2, "2022-11-09T02:00:00Z")]
    [InlineData("AL282020", 29.95, -90.07, "2020-10-28T18:45:00Z")]
    public void BestTrack_FirstGale_IsAsReadOffByAnotherProgram(string stormId, double latDeg, double lonDeg, string expected) =>
        Assert.Equal(expected, BestTrack.Gales(stormId, latDeg, lonDeg)[0].ToString());

    [Fact]
    public async Task Garden_FarAway_GetsNoMessageAtAll()
    {
        var storm = await Rehearsed.ArchiveAsync("al092022-ian", 45, -100);
        Assert.DoesNotContain(storm.Events, entry => entry.Kind is not "advisory");
        Assert.Equal(storm.Advisories.Count, storm.Events.Count);
    }

    /// <summary>Beryl 2024 was forecast to bring 34 kt to 25.9 N 97.5 W and then turned north.</summary>
    [Fact]
    public async Task NearMiss_ForecastTurnsAway_StandsDownWithItsUndoList()
    {
        var storm = await Rehearsed.ArchiveAsync("al022024-beryl", 25.9, -97.5);

        Assert.Empty(BestTrack.Gales("AL022024", 25.9, -97.5));
        Assert.NotNull(storm.First(Stage.MainWork));
        Assert.Null(storm.First(Stage.GardenClosed));
        Assert.NotNull(storm.FirstOf("standdown"));
        var done = storm.Events.Where(entry => entry.Kind == "done").SelectMany(entry => entry.Jobs!).ToHashSet();
        var message = Assert.Single(storm.Sent, sent => sent.Reason == "StandDown" && sent.To == "gardener@practice.invalid");
        Assert.NotEmpty(message.Jobs!);
        Assert.All(message.Jobs!, token => Assert.Contains(token["undo:".Length..], done));
        AssertSentOnce(storm);
    }

    private static void AssertSentOnce(Rehearsed storm) =>
        Assert.Equal(storm.Sent.Count, storm.Sent.Select(sent => sent.Key).Distinct().Count());
}
