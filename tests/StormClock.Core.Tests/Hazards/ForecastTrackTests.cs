using StormClock.Core.Advisories;
using StormClock.Core.Hazards;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Hazards;

public class ForecastTrackTests
{
    private static readonly Instant Synoptic = Instant.FromUtc(2030, 9, 1, 0, 0);
    private static readonly QuadrantRadii Round100 = new(100, 100, 100, 100);

    [Fact]
    public void Of_Ian16_LeadsCountFromTheSynopticTime()
    {
        var track = ForecastTrack.Of(SampleStorms.Ian16);
        Assert.Equal([3, 12, 24, 36, 48, 60, 72, 96, 120], track.Points.Select(point => point.LeadHours));
        Assert.Equal(Instant.FromUtc(2022, 9, 27, 0, 0), track.Origin);
        Assert.Equal(120, track.HorizonHours);
    }

    [Fact]
    public void Of_SpecialAdvisory_DropsPointsAlreadyPast()
    {
        var storm = Storm(SampleStorms.Point(13.75, 20, -60, 70), SampleStorms.Point(12, 19, -60, 65), SampleStorms.Point(24, 22, -60, 80));
        Assert.Equal([13.75, 24], ForecastTrack.Of(storm).Points.Select(point => point.LeadHours));
    }

    [Fact]
    public void Of_Dissipated_EndsTheTrackThereWithoutWind()
    {
        var last = SampleStorms.Point(36, 0, 0, null);
        var gone = last with { Point = last.Point with { Centre = null, Nature = CycloneNature.Dissipated } };
        var track = ForecastTrack.Of(Storm(
            SampleStorms.Point(3, 20, -60, 40, Round100), SampleStorms.Point(24, 22, -60, 35, Round100), gone, SampleStorms.Point(48, 25, -60, 60)));
        Assert.Equal(36, track.HorizonHours);
        Assert.Equal(new GeoPoint(22, -60), track.Points[^1].Centre);
        Assert.Equal(0, track.Points[^1].MaxWindKt);
        Assert.True(track.Points[^1].Gone);
    }

    [Fact]
    public void Deterministic_Dissipating_WindShrinksToNothingByThen()
    {
        // Round field of 100 n mi, mean reach 0.85 · e^0.06, standing still 45 n mi off; halves after half of the 12 h.
        var last = SampleStorms.Point(24, 20, -60, null);
        var gone = last with { Point = last.Point with { Nature = CycloneNature.Dissipated } };
        var track = ForecastTrack.Of(Storm(SampleStorms.Point(3, 20, -60, 50, Round100), SampleStorms.Point(12, 20, -60, 50, Round100), gone));
        var members = Ensemble.Deterministic(track, new(20.75, -60), [34]);
        var reach = 100 * 0.85 * Math.Exp(0.06);
        Assert.Equal(3, members.ArrivalHours(34)[0]);
        Assert.Equal(Math.Floor((12 + 12 * (1 - 45 / reach)) * 4) / 4, members.EndHours(34)[0], 1e-6);
    }

    [Fact]
    public void Run_Dissipated_NoMemberHasWindThere()
    {
        var last = SampleStorms.Point(24, 20, -60, null);
        var gone = last with { Point = last.Point with { Nature = CycloneNature.Dissipated } };
        var track = ForecastTrack.Of(Storm(SampleStorms.Point(3, 20, -60, 50, Round100), gone));
        var members = Ensemble.Run(track, new(20, -60), [34], ReferenceStatistics.Atlantic2014To2018, Draws.Default);
        Assert.True(members.EndHours(34).ToArray().Where(end => !float.IsNaN(end)).Max() < 24);
    }

    [Theory]
    [InlineData(CycloneNature.RemnantLow)]
    [InlineData(CycloneNature.PostTropical)]
    public void Of_RemnantOrPostTropical_KeepsItsWind(CycloneNature nature)
    {
        var later = SampleStorms.Point(24, 22, -60, 45, Round100);
        var track = ForecastTrack.Of(Storm(SampleStorms.Point(3, 20, -60, 50, Round100), later with { Point = later.Point with { Nature = nature } }));
        Assert.Equal(45, track.Points[^1].MaxWindKt);
        Assert.Equal(Round100, track.Points[^1].Radii34);
    }

    [Fact]
    public void Of_WindNotGiven_IsNeverCalm()
    {
        var track = ForecastTrack.Of(Storm(SampleStorms.Point(3, 20, -60, 50), SampleStorms.Point(24, 22, -60, null)));
        Assert.Equal(50, track.Points[^1].MaxWindKt);
    }

    [Fact]
    public void Deterministic_PresentPositionOnly_CountsTheWindItHas()
    {
        var track = ForecastTrack.Of(Storm(SampleStorms.Point(3, 20, -60, 50, Round100)));
        Assert.Equal(3, Ensemble.Deterministic(track, new(20.5, -60), [34]).ArrivalHours(34)[0]);
        Assert.True(float.IsNaN(Ensemble.Deterministic(track, new(23, -60), [34]).ArrivalHours(34)[0]));
    }

    [Fact]
    public void Deterministic_RadiiMissingAtLongLead_AreUnknownNotZero()
    {
        // As before 2024: 34 kt radii end at 72 h although the storm stays strong. Size factor and shape come from the last that had them.
        var track = ForecastTrack.Of(Storm(
            SampleStorms.Point(3, 20, -60, 80, Round100), SampleStorms.Point(72, 20, -70, 80, Round100), SampleStorms.Point(120, 20, -80, 80)));
        var near = Ensemble.Deterministic(track, new(21, -79), [34]);
        Assert.InRange(near.ArrivalHours(34)[0], 72, 120);
        var without = Ensemble.Deterministic(track, new(23, -79), [34]);
        Assert.True(float.IsNaN(without.ArrivalHours(34)[0]));
    }

    [Fact]
    public void Deterministic_ForecastBelowTheWind_HasNoRadius()
    {
        var track = ForecastTrack.Of(Storm(SampleStorms.Point(3, 20, -60, 30), SampleStorms.Point(48, 20, -70, 30)));
        var members = Ensemble.Deterministic(track, new(20, -65), [20, 34]);
        Assert.True(float.IsNaN(members.ArrivalHours(34)[0]));
        Assert.False(float.IsNaN(members.ArrivalHours(20)[0]));
    }

    [Fact]
    public void Run_DepressionForecast_SomeMembersStillReachGaleForce()
    {
        var track = ForecastTrack.Of(Storm(SampleStorms.Point(3, 20, -60, 30), SampleStorms.Point(48, 20, -70, 30)));
        var members = Ensemble.Run(track, new(20, -65), [34], ReferenceStatistics.Atlantic2014To2018, Draws.Default);
        Assert.InRange(WindCrossing.Of(members, 34, Synoptic).Chance, 0.02, 0.5);
    }

    private static CycloneAdvisory Storm(params SampleStorms.PointAtLead[] points) => SampleStorms.Storm("AL992030", "TEST", "1", Synoptic, points);
}
