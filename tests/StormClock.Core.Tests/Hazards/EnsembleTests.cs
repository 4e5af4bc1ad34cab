using StormClock.Core.Advisories;
using StormClock.Core.Hazards;
using StormClock.Core.Units;
using StormClock.Skill.Score;

namespace StormClock.Core.Tests.Hazards;

public class EnsembleTests
{
    private static readonly double[] Standard = [34, 50, 64];

    /// <summary>M1: along the equator at 12 kt, over longitude 0 at 50 h; 60 kt; 34 kt within 100 n mi all round.</summary>
    private static readonly CycloneAdvisory EquatorStorm = SampleStorms.Straight(
        maxKt: 60, radius34: 100, leadHours => new(0, (leadHours - 50) * 12 / 60));

    private static readonly GeoPoint OneDegreeNorth = new(1, 0);

    [Fact]
    public void Run_M1CrossTrackErrorOnly_MatchesTheNormalIntegral()
    {
        // science.md 9, M1: P = Φ(40/45) − Φ(−160/45) = 0.8128 (D, analytic).
        double[] spread = [45, 45, 45, 45, 45, 45, 45, 45, 45];
        double[] whole = [1, 1, 1, 1, 1, 1, 1, 1];
        var errors = ErrorStatistics.None with
        {
            CrossSigmaNmi = spread, CrossRho = whole, TrackScale = 1, MultiplierSigma = 0, SizeBias = 0, MeanReach = 1,
        };
        var members = Ensemble.Run(ForecastTrack.Of(EquatorStorm), OneDegreeNorth, [34], errors, Draws.Default);
        Assert.Equal(0.8128, WindCrossing.Of(members, 34, members.Origin).Chance, 0.012);
    }

    [Fact]
    public void Deterministic_M1_ArrivesAndEndsOnTheGrid()
    {
        // M1: exact arrival 43.33 h and end 56.67 h with the whole radius; the quarter-hour steps inside are 43.50 and 56.50.
        var errors = ErrorStatistics.None with { SizeBias = 0, MeanReach = 1 };
        var members = Ensemble.Run(ForecastTrack.Of(EquatorStorm), OneDegreeNorth, [34], errors, Draws.Still);
        Assert.Equal(43.5f, members.ArrivalHours(34)[0]);
        Assert.Equal(56.5f, members.EndHours(34)[0]);
        Assert.Equal(1, members.Count);
    }

    /// <summary>science.md 9, M2 to M6 (D): chance in % by 24, 36, 48, 72, 120 h (−1: none stated), then t10c and t50c in hours.</summary>
    public static TheoryData<string, string, string, string, string, double[], double, double> Storms => new()
    {
        { "cases-2016-2018.txt.gz", "params9_1115.txt", "al112017", "36", "MIAMI_FL", [1, 22, 67, 96, 97], 32.75, 42.75 },
        { "cases-2016-2018.txt.gz", "params9_1115.txt", "al112017", "40", "TAMPA_FL", [-1, -1, 93, 98, -1], 30.5, 38.75 },
        { "cases-2022-2025.txt.gz", "params9_1418.txt", "al092022", "16", "FT_MYERS_FL", [15, 76, 87, 91, -1], 22.75, 28.75 },
        { "cases-2022-2025.txt.gz", "params9_1418.txt", "al092024", "6", "TALLAHASSEE_FL", [-1, -1, 23, 85, -1], double.NaN, 50.25 },
        { "cases-2022-2025.txt.gz", "params9_1418.txt", "al022024", "34", "HOUSTON_TX", [-1, 45, 57, 63, -1], double.NaN, 33.25 },
    };

    [Theory, MemberData(nameof(Storms))]
    public void Run_StormsOnRecord_MatchTheReference(
        string cases, string statistics, string storm, string number, string placeName, double[] percentBy, double earliest, double likely)
    {
        var found = ClockCase.Find(Path.Combine(Shared.Folder("clock-cases"), cases), storm, number);
        var place = found.Places.First(row => row.Name == placeName).At;
        var members = Ensemble.Run(ForecastTrack.Of(found.Advisory), place, [34], ClockCase.Statistics(Path.Combine(Shared.Folder("clock-cases"), statistics)), Draws.Default);
        AssertChances(percentBy, earliest, likely, members);
    }

    [Fact]
    public void Run_Ian16FortMyers_MatchesTheReference()
    {
        // M4 with the advisory's own numbers, so that it runs anywhere.
        var track = ForecastTrack.Of(SampleStorms.Ian16);
        var members = Ensemble.Run(track, SampleStorms.FortMyers, Standard, ReferenceStatistics.Atlantic2014To2018, Draws.Default);
        AssertChances([15, 76, 87, 91, -1], 22.75, 28.75, members);
    }

    [Fact]
    public void Run_SameInputTwice_IsBitEqual()
    {
        var first = WindOutlook.At(SampleStorms.Ian16, SampleStorms.FortMyers, Standard);
        var second = WindOutlook.At(SampleStorms.Ian16, SampleStorms.FortMyers, Standard);
        foreach (var threshold in Standard)
        {
            Assert.Equal(first.ArrivalHours(threshold).ToArray(), second.ArrivalHours(threshold).ToArray());
            Assert.Equal(first.EndHours(threshold).ToArray(), second.EndHours(threshold).ToArray());
        }

        Assert.Equal(first.PeakKt.ToArray(), second.PeakKt.ToArray());
    }

    [Fact]
    public void Run_MembersReversed_GivesTheSameMembersReversed()
    {
        var track = ForecastTrack.Of(SampleStorms.Ian16);
        var errors = ReferenceStatistics.Atlantic2014To2018;
        float[] forward = [.. Enumerable.Range(0, 200).SelectMany(m => Draws.Default.Of(m).ToArray())];
        float[] backward = [.. Enumerable.Range(0, 200).Reverse().SelectMany(m => Draws.Default.Of(m).ToArray())];
        var a = Ensemble.Run(track, SampleStorms.FortMyers, Standard, errors, new(forward));
        var b = Ensemble.Run(track, SampleStorms.FortMyers, Standard, errors, new(backward));
        Assert.Equal(a.ArrivalHours(34).ToArray(), b.ArrivalHours(34).ToArray().Reverse());
        Assert.Equal(a.PeakKt.ToArray(), b.PeakKt.ToArray().Reverse());
        Assert.Equal(WindCrossing.Of(a, 34, a.Origin).ChanceBy, WindCrossing.Of(b, 34, b.Origin).ChanceBy);
    }

    [Fact]
    public void Run_ManyThreads_GivesTheSame()
    {
        var alone = WindOutlook.At(SampleStorms.Ian16, SampleStorms.FortMyers, [34]).ArrivalHours(34).ToArray();
        Parallel.For(0, 4, _ =>
            Assert.Equal(alone, WindOutlook.At(SampleStorms.Ian16, SampleStorms.FortMyers, [34]).ArrivalHours(34).ToArray()));
    }

    [Fact]
    public void Run_StrongerWind_IsNeverMoreLikelyThanWeaker()
    {
        double[] thresholds = [17, 25, 30, 34, 40, 50, 57, 64, 80];
        var members = WindOutlook.At(SampleStorms.Ian16, SampleStorms.FortMyers, thresholds);
        for (var hour = 3.0; hour <= 120; hour += 3)
        {
            var shares = thresholds.Select(threshold => ShareBy(members, threshold, hour)).ToArray();
            for (var t = 1; t < shares.Length; t++) Assert.True(shares[t] <= shares[t - 1] + 0.005, $"{thresholds[t]} kt by {hour} h");
        }
    }

    [Fact]
    public void Run_AnyMember_EndsAfterItArrivesAndPeaksAtLeastAtThatWind()
    {
        var members = WindOutlook.At(SampleStorms.Ian16, SampleStorms.FortMyers, Standard);
        foreach (var threshold in Standard)
        {
            var (arrivals, ends) = (members.ArrivalHours(threshold).ToArray(), members.EndHours(threshold).ToArray());
            for (var m = 0; m < members.Count; m++)
            {
                Assert.Equal(float.IsNaN(arrivals[m]), float.IsNaN(ends[m]));
                if (float.IsNaN(arrivals[m])) continue;
                Assert.True(arrivals[m] <= ends[m]);
                Assert.InRange(arrivals[m], 3, 120);
                Assert.True(members.PeakKt.Span[m] >= threshold);
            }
        }
    }

    [Fact]
    public void Deterministic_PeakAtTheCentre_IsTheForecastMaximum()
    {
        var members = Ensemble.Deterministic(ForecastTrack.Of(EquatorStorm), new(0, 0), [34]);
        Assert.Equal(60, members.PeakKt.Span[0], 0.01);
    }

    [Fact]
    public void Run_StormAcrossTheAntimeridian_IsTheSameAsElsewhere()
    {
        var here = SampleStorms.Straight(100, 120, lead => new(-18, (lead - 50) * 0.2));
        var there = SampleStorms.Straight(100, 120, lead => new(-18, GreatCircle.WrapLonDeg(180 + (lead - 50) * 0.2)));
        var errors = ReferenceStatistics.Atlantic2014To2018;
        var a = Ensemble.Run(ForecastTrack.Of(here), new(-18.5, 0), [34], errors, Draws.Default);
        var b = Ensemble.Run(ForecastTrack.Of(there), new(-18.5, 180), [34], errors, Draws.Default);
        Assert.Equal(WindCrossing.Of(a, 34, a.Origin).Chance, WindCrossing.Of(b, 34, b.Origin).Chance, 0.001);
    }

    private static void AssertChances(double[] percentBy, double earliest, double likely, WindMembers members)
    {
        var crossing = WindCrossing.Of(members, 34, members.Origin);
        int[] leads = [24, 36, 48, 72, 120];
        for (var i = 0; i < leads.Length; i++)
        {
            if (percentBy[i] >= 0) Assert.True(Math.Abs(percentBy[i] - 100 * crossing.ChanceBy[leads[i]]) <= 4, $"{leads[i]} h: {crossing.ChanceBy[leads[i]]}");
        }

        if (!double.IsNaN(earliest)) Assert.Equal(earliest, (crossing.EarliestReasonable!.Value - members.Origin).TotalHours, 2.0);
        Assert.Equal(likely, (crossing.MostLikely!.Value - members.Origin).TotalHours, 2.0);
    }

    private static double ShareBy(WindMembers members, double threshold, double hour) =>
        members.ArrivalHours(threshold).ToArray().Count(arrival => arrival <= hour) / (double)members.Count;
}
