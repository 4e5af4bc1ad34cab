using StormClock.Core.Hazards;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Hazards;

public class PlaceWindsTests
{
    private static readonly double[] Standard = [34, 50, 64];

    [Fact]
    public void At_PlaceAfterPlace_GivesWhatEachGivesAlone()
    {
        var winds = new PlaceWinds(WindOutlook.Storm(SampleStorms.Ian16, Standard));
        foreach (var place in new GeoPoint[] { SampleStorms.FortMyers, new(60, 10), new(27.96, -82.54), SampleStorms.FortMyers })
        {
            var (one, alone) = (winds.At(place), WindOutlook.At(SampleStorms.Ian16, place, Standard));
            foreach (var threshold in Standard)
            {
                Assert.Equal(alone.ArrivalHours(threshold).ToArray(), one.ArrivalHours(threshold).ToArray());
                Assert.Equal(alone.EndHours(threshold).ToArray(), one.EndHours(threshold).ToArray());
            }

            Assert.Equal(alone.PeakKt.ToArray(), one.PeakKt.ToArray());
        }
    }

    [Fact]
    public void At_FurtherPlaces_CostNoTables()
    {
        var winds = new PlaceWinds(WindOutlook.Storm(SampleStorms.Ian16, Standard));
        winds.At(SampleStorms.FortMyers);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 10; i++) winds.At(SampleStorms.FortMyers);

        // One table of 10,000 hours has 40 KB; what is made for a place does not depend on the number of members.
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 10 * 2048);
    }

    [Fact]
    public void At_MembersThatDoNotFillTheLastBlock_AreAllThereAndNoMore()
    {
        float[] thirteen = [.. Enumerable.Range(0, 13).SelectMany(m => Draws.Default.Of(m).ToArray())];
        var track = ForecastTrack.Of(SampleStorms.Ian16);
        var some = Ensemble.Run(track, SampleStorms.FortMyers, Standard, ReferenceStatistics.Atlantic2014To2018, new(thirteen));
        var all = Ensemble.Run(track, SampleStorms.FortMyers, Standard, ReferenceStatistics.Atlantic2014To2018, Draws.Default);
        Assert.Equal(13, some.Count);
        Assert.Equal(all.ArrivalHours(34)[..13].ToArray(), some.ArrivalHours(34).ToArray());
        Assert.Equal(all.PeakKt.Span[..13].ToArray(), some.PeakKt.ToArray());
    }

    /// <summary>Hours and shapes worked out step by step in plain double arithmetic, as science.md 3.5 puts it, against the eightfold kernel.</summary>
    [Fact]
    public void Deterministic_RoundStormsAtAnyAngle_MatchTheStepByStepCount()
    {
        for (var course = 0; course < 360; course += 7)
        {
            var (north, east) = (Math.Cos(course * Math.PI / 180) / 6, Math.Sin(course * Math.PI / 180) / 6);
            var storm = SampleStorms.Straight(60, 100, lead => new((lead - 61.3) * north, (lead - 61.3) * east));
            var errors = ErrorStatistics.None with { SizeBias = 0, MeanReach = 1 };
            var place = new GeoPoint(0.5, 0.3);
            var members = Ensemble.Run(ForecastTrack.Of(storm), place, [34], errors, Draws.Still);

            var plane = new LocalPlane(place);
            var within = Enumerable.Range(12, 480 - 12 + 1).Where(step => DistanceAt(storm, plane, step * Ensemble.StepHours) < 100).ToList();
            Assert.Equal(within[0] * Ensemble.StepHours, members.ArrivalHours(34)[0]);
            Assert.Equal(within[^1] * Ensemble.StepHours, members.EndHours(34)[0]);
        }
    }

    private static double DistanceAt(StormClock.Core.Advisories.CycloneAdvisory storm, LocalPlane plane, double hours)
    {
        var points = ForecastTrack.Of(storm).Points;
        var leg = Enumerable.Range(0, points.Count - 1).Last(k => points[k].LeadHours <= hours || k == 0);
        var share = (hours - points[leg].LeadHours) / (points[leg + 1].LeadHours - points[leg].LeadHours);
        var (x1, y1) = plane.Place(points[leg].Centre);
        var (x2, y2) = plane.Place(points[leg + 1].Centre);
        return Math.Sqrt(Math.Pow(x1 + share * (x2 - x1), 2) + Math.Pow(y1 + share * (y2 - y1), 2));
    }
}
