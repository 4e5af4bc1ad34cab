using StormClock.Core.Advisories;
using StormClock.Core.Formats.ForecastAdvisory;
using StormClock.Core.Hazards;

namespace StormClock.Core.Tests.Hazards;

/// <summary>Every real forecast/advisory at hand, of 1991 to 2025, goes through the outlook.</summary>
public class RealAdvisoryOutlookTests
{
    private static readonly double[] Thresholds = [17, 34, 50, 64];

    private static Draws FewDraws { get; } = new([.. Enumerable.Range(0, 100).SelectMany(m => Draws.Default.Of(m).ToArray())]);

    [Fact]
    public void Run_EveryRealAdvisory_GivesSoundMembersWhereTheStormIsAndWhereItGoes()
    {
        var advisories = RealAdvisories();
        Assert.NotEmpty(advisories);
        foreach (var advisory in advisories)
        {
            var track = ForecastTrack.Of(advisory);
            AssertSound(advisory, track, Ensemble.Run(track, track.Points[0].Centre, Thresholds, ErrorStatistics.For(advisory.StormId), FewDraws));
            AssertSound(advisory, track, Ensemble.Run(track, track.Points[^1].Centre, Thresholds, ErrorStatistics.For(advisory.StormId), FewDraws));
        }
    }

    [Fact]
    public void Deterministic_EveryRealStormOfGaleForce_BlowsAtItsOwnCentre()
    {
        foreach (var advisory in RealAdvisories().Where(advisory => advisory.Now.MaxWindKt >= 45))
        {
            var track = ForecastTrack.Of(advisory);
            var members = Ensemble.Deterministic(track, track.Points[0].Centre, [34]);

            // The first quarter of an hour at or after the position; at most one step away.
            Assert.InRange(members.ArrivalHours(34)[0], track.Points[0].LeadHours, track.Points[0].LeadHours + Ensemble.StepHours);
            Assert.True(members.PeakKt.Span[0] >= 0.999 * advisory.Now.MaxWindKt, advisory.Title);
        }
    }

    [Fact]
    public void Read_Ian16_IsTheRetypedAdvisory()
    {
        var text = Path.Combine(Shared.Folder("nhc-tcm"), "al092022-ian", "016.txt");
        var read = ForecastAdvisoryReader.Read(File.ReadAllBytes(text)).Value!;
        Assert.Equal(
            WindOutlook.At(SampleStorms.Ian16, SampleStorms.FortMyers, Thresholds).ArrivalHours(34).ToArray(),
            WindOutlook.At(read, SampleStorms.FortMyers, Thresholds).ArrivalHours(34).ToArray());
    }

    private static List<CycloneAdvisory> RealAdvisories() =>
        [.. Shared.Files("nhc-tcm", "*.txt").Concat(Shared.Files("nhc-tcm-old-formats", "*.txt"))
            .Select(file => ForecastAdvisoryReader.Read(File.ReadAllBytes(file)).Value).OfType<CycloneAdvisory>()];

    private static void AssertSound(CycloneAdvisory advisory, ForecastTrack track, WindMembers members)
    {
        Assert.All(members.PeakKt.ToArray(), peak => Assert.InRange(peak, 0, 250));
        foreach (var threshold in Thresholds)
        {
            for (var m = 0; m < members.Count; m++)
            {
                var (arrival, end) = (members.ArrivalHours(threshold)[m], members.EndHours(threshold)[m]);
                if (float.IsNaN(arrival)) continue;
                Assert.True(
                    arrival >= track.Points[0].LeadHours && arrival <= end && end <= track.HorizonHours, $"{advisory.Title}: {arrival} to {end}");
            }
        }
    }
}
