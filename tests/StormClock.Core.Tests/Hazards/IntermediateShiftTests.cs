using StormClock.Core.Advisories;
using StormClock.Core.Hazards;
using StormClock.Core.Tests.Garden;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Hazards;

/// <summary>
/// Fiona 2022: of 241 intermediate advisories in the archive at hand, 38A found its storm farthest ahead of the track (74 n mi). Numbers of
/// the National Hurricane Center's forecast/advisory 38 and public advisory 38A, retyped.
/// </summary>
public class IntermediateShiftTests
{
    private static readonly QuadrantRadii R34 = new(250, 300, 150, 200);

    private static readonly CycloneAdvisory Fiona38 = SampleStorms.Storm(
        "AL072022", "FIONA", "38", Instant.FromUtc(2022, 9, 23, 18, 0),
        SampleStorms.Point(3, 39.6, -61.0, 110, R34, new(120, 120, 100, 120), new(80, 100, 60, 80)),
        SampleStorms.Point(12, 44.0, -60.6, 90, new(300, 370, 280, 250), new(150, 180, 140, 170), new(80, 100, 60, 80)),
        SampleStorms.Point(24, 47.2, -60.0, 70, new(300, 360, 300, 270), new(150, 180, 120, 150), new(60, 80, 60, 60)),
        SampleStorms.Point(36, 50.0, -59.0, 55, new(210, 270, 240, 150), new(60, 90, 60, 60)),
        SampleStorms.Point(48, 54.5, -57.5, 45, new(120, 150, 90, 90)));

    private static readonly CyclonePosition Fiona38A = new("AL072022", "FIONA", "38A", Instant.FromUtc(2022, 9, 24, 0, 0), new(42.3, -60.7), 110, 22.5, 40);

    /// <summary>Somewhere on Cape Breton Island.</summary>
    private static readonly GeoPoint Place = new(46.0, -60.4);

    /// <summary>At 0000 UTC the track had 41.07 N 60.87 W and 103 kt; the move of 1.23° and 7 kt fades by a quarter in 6 h and is gone after a day (worked by hand).</summary>
    [Fact]
    public void Moving_StormAheadOfItsTrack_FadesOverADay()
    {
        var moved = IntermediateShift.Moved(Fiona38, [Fiona38A])!;
        Assert.Equal((Fiona38A.Centre, 110.0, Fiona38A.IssuedAt), (moved.Now.Centre!.Value, moved.Now.MaxWindKt!.Value, moved.Now.Valid));
        Assert.Equal([44.92, 47.51, 50.0, 54.5], moved.Forecast.Select(point => Math.Round(point.Centre!.Value.LatDeg, 2)));
        Assert.Equal([95, 71.67, 55, 45], moved.Forecast.Select(point => Math.Round(point.MaxWindKt!.Value, 2)));
        Assert.NotEqual(Fiona38.Id, moved.Id);
    }

    [Fact]
    public void Applying_StormAhead_BringsWindSoonerAndNeverLater()
    {
        var (own, moved) = (Members(Fiona38), Applied(Fiona38, Fiona38A));
        Assert.All(Enumerable.Range(0, own.Count), m => Assert.False(moved.ArrivalHours(64)[m] > own.ArrivalHours(64)[m] || moved.EndHours(34)[m] < own.EndHours(34)[m]));
        var hours = Median(own) - Median(moved);
        Assert.InRange(hours, 1.5, 4.6); // at most 74 n mi at the 16 kt at which it then goes on; some of it has faded
    }

    [Theory]
    [InlineData(40.2, -61.0, 60)] // far behind its track and weaker
    [InlineData(41.1, -58.0, 100)] // passing farther out
    public void Applying_AnythingBetter_ChangesNothingForTheBetter(double lat, double lon, double maxKt)
    {
        var (own, moved) = (Members(Fiona38), Applied(Fiona38, Fiona38A with { Centre = new(lat, lon), MaxWindKt = maxKt }));
        Assert.All(Enumerable.Range(0, own.Count), m =>
        {
            Assert.False(float.IsNaN(moved.ArrivalHours(34)[m]) && !float.IsNaN(own.ArrivalHours(34)[m]));
            Assert.False(moved.ArrivalHours(34)[m] > own.ArrivalHours(34)[m] || moved.EndHours(34)[m] < own.EndHours(34)[m]);
            Assert.True(moved.PeakKt.Span[m] >= own.PeakKt.Span[m]);
        });
    }

    /// <summary>Ian 2022: advisory 16 had 21.80 N 83.50 W and 95 kt for 0600 UTC; 16A found 21.7 N 83.6 W and 95 kt.</summary>
    [Fact]
    public void Moving_StormWhereItWasExpected_HardlyMovesIt()
    {
        var moved = IntermediateShift.Moved(SampleStorms.Ian16, [new("AL092022", "IAN", "16A", Instant.FromUtc(2022, 9, 27, 6, 0), new(21.7, -83.6), 95, null, null)])!;
        Assert.All(moved.Forecast.Zip(SampleStorms.Ian16.Forecast), pair =>
        {
            Assert.InRange(GreatCircle.DistanceNmi(pair.First.Centre!.Value, pair.Second.Centre!.Value), 0, 9);
            Assert.Equal(pair.Second.MaxWindKt!.Value, pair.First.MaxWindKt!.Value, 1e-9);
        });
    }

    [Theory]
    [InlineData("AL082022", 0, 42.3)] // another storm
    [InlineData("AL072022", -4, 42.3)] // older than the advisory
    [InlineData("AL072022", -3, 42.3)] // the public advisory of the same number
    [InlineData("AL072022", 0, 47.3)] // no storm goes 460 n mi in 3 h: a slip in the text
    public void Moving_PositionOfNoUse_IsLeftOut(string storm, int hours, double lat) =>
        Assert.Null(IntermediateShift.Moved(Fiona38, [Fiona38A with { StormId = storm, IssuedAt = Fiona38A.IssuedAt + Duration.FromHours(hours), Centre = new(lat, -60.7) }]));

    [Fact]
    public void Timeline_IntermediateAdvisoryHeard_ActsUntilTheNextFullOne()
    {
        var garden = Gardens.With([Gardens.Person("p")], Gardens.Job("job", 30));
        garden = garden with { Sites = [.. garden.Sites.Select(site => site with { At = Place })] };
        var ledger = AdvisoryLedger.Empty.With(Fiona38, Fiona38.IssuedAt).With(Fiona38A, Fiona38A.IssuedAt);
        var full39 = Fiona38 with { Number = "39", IssuedAt = Instant.FromUtc(2022, 9, 24, 3, 0), Synoptic = Instant.FromUtc(2022, 9, 24, 0, 0) };

        Assert.Equal(Arrival(AdvisoryLedger.Empty.With(Fiona38, Fiona38.IssuedAt), Fiona38A.IssuedAt), Arrival(ledger, Fiona38A.IssuedAt - Duration.FromMinutes(1)));
        Assert.True(Arrival(ledger, Fiona38A.IssuedAt) < Arrival(ledger, Fiona38A.IssuedAt - Duration.FromMinutes(1)));
        Assert.Equal(Arrival(AdvisoryLedger.Empty.With(full39, full39.IssuedAt), full39.IssuedAt), Arrival(ledger.With(full39, full39.IssuedAt), full39.IssuedAt));

        float Arrival(AdvisoryLedger heard, Instant now) =>
            Median(HazardTimeline.Of(heard, garden, now, (advisory, site, kt) => WindOutlook.At(advisory, site.At, [.. kt.Append(64).Order()])).Winds[0].Cyclones!);
    }

    /// <summary>It moves stops, so a plan that was made before it must not stay in force.</summary>
    [Fact]
    public void Timeline_IntermediateAdvisoryHeard_IsWordOfTheWeather()
    {
        var ledger = AdvisoryLedger.Empty.With(Fiona38, Fiona38.IssuedAt).With(Fiona38A, Fiona38A.IssuedAt);
        Assert.NotEqual(Standing(Fiona38A.IssuedAt - Duration.FromMinutes(1)), Standing(Fiona38A.IssuedAt));

        string Standing(Instant now) => HazardTimeline.Of(ledger, Gardens.With([Gardens.Person("p")], Gardens.Job("job", 30)), now, (advisory, site, kt) => WindOutlook.At(advisory, site.At, kt)).StandingIds;
    }

    private static WindMembers Members(CycloneAdvisory advisory) => WindOutlook.At(advisory, Place, [34, 64]);

    private static WindMembers Applied(CycloneAdvisory advisory, CyclonePosition position) => IntermediateShift.Applied(advisory, [position], Members);

    private static float Median(WindMembers members)
    {
        var known = members.ArrivalHours(64).ToArray().Where(hour => !float.IsNaN(hour)).Order().ToArray();
        return known[known.Length / 2];
    }
}
