using StormClock.Core.Advisories;
using StormClock.Core.Formats.ForecastAdvisory;

namespace StormClock.Core.Tests.Formats;

/// <summary>All real messages at hand. The counts were taken from the files with grep, not from the reader.</summary>
public class RealForecastAdvisoryTests
{
    [Theory]
    [InlineData("nhc-tcm", 549, 0)]
    [InlineData("nhc-tcm-old-formats", 38, 25)]
    public void Reading_EveryRealMessage_GivesAnAdvisoryOrNamesTheOtherProduct(string folder, int advisories, int others)
    {
        var read = Shared.Files(folder, "*.txt").Select(Read).ToList();

        Assert.Equal(advisories, read.Count(one => one.IsGood));
        var refused = read.Where(one => !one.IsGood).ToList();
        Assert.Equal(others, refused.Count);
        Assert.All(refused, one => Assert.Contains("PROBABILITIES NUMBER", one.Faults[0].Reason));
    }

    [Fact]
    public void Reading_AllRealMessages_LosesNoLineThatCarriesNumbers()
    {
        var read = All();
        var points = read.SelectMany(one => one.Forecast).ToList();

        // 4107 lines FORECAST or OUTLOOK VALID, one of them (central Pacific 1994) a second one for the same moment.
        Assert.Equal(4107 - 1, points.Count);
        Assert.Equal(166, points.Count(point => point.Centre is null));
        Assert.Equal(166, points.Count(point => point.Nature == CycloneNature.Dissipated));

        // 4528 lines MAX WIND or MAX SUSTAINED WINDS, of which that second point has one.
        var all = points.Concat(read.Select(one => one.Now)).ToList();
        Assert.Equal(4528 - 1, all.Count(point => point.MaxWindKt is not null && point.GustKt is not null));

        // 7170 lines of 34, 50 and 64 kt radii.
        Assert.Equal(7170, all.Sum(point => Given(point.Radii34) + Given(point.Radii50) + Given(point.Radii64)));
    }

    [Fact]
    public void Reading_AllRealMessages_KnowsTheirSort()
    {
        var read = All();

        Assert.Equal(18, read.Count(one => one.Corrected));
        Assert.Equal(10, read.Count(one => one.Special));
        Assert.Equal(20, read.Count(one => one.Potential));
        Assert.Equal(22, read.Count(one => one.Final));
        Assert.Equal(read.Count, read.Select(one => one.Id).Distinct().Count());
        Assert.All(read, one => Assert.InRange((one.IssuedAt - one.Synoptic).TotalHours, 0, 6));
        Assert.All(read, one => Assert.Equal(one.IssuedAt, one.Now.Valid));
    }

    [Fact]
    public void Reading_AllRealMessages_GivesIdsWithFourDigitYears()
    {
        var withoutId = All().Where(one => one.StormId.Contains('-')).Select(one => one.StormId);
        Assert.Equal(["AL-ANA-1991", "CP-THREE-C-1994"], withoutId.Order());
        Assert.All(All(), one => Assert.EndsWith(one.IssuedAt.InUtc().Year.ToString(), one.StormId));
    }

    private static int Given(QuadrantRadii? radii) => radii is null ? 0 : 1;

    private static List<CycloneAdvisory> All() =>
        [.. Shared.Files("nhc-tcm", "*.txt").Concat(Shared.Files("nhc-tcm-old-formats", "*.txt")).Select(Read).Where(one => one.IsGood).Select(one => one.Value!)];

    private static ReadResult<CycloneAdvisory> Read(string file) => ForecastAdvisoryReader.Read(File.ReadAllBytes(file));
}
