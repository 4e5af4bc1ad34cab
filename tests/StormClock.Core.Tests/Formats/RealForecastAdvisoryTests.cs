using StormClock.Core.Formats.ForecastAdvisory;

namespace StormClock.Core.Tests.Formats;

public class RealForecastAdvisoryTests
{
    [Theory]
    [InlineData("nhc-tcm", 549, 0)]
    [InlineData("nhc-tcm-old-formats", 38, 25)]
    public void Reading_EveryRealMessage_GivesAnAdvisoryOrNamesTheOtherProduct(string folder, int advisories, int others)
    {
        var read = Shared.Files(folder, "*.txt").Select(file => (file, result: Read(file))).ToList();

        Assert.Equal(advisories, read.Count(one => one.result.IsGood));
        var refused = read.Where(one => !one.result.IsGood).ToList();
        Assert.Equal(others, refused.Count);
        Assert.All(refused, one => Assert.Contains("PROBABILITIES NUMBER", one.result.Faults[0].Reason));
    }

    private static ReadResult<Core.Advisories.CycloneAdvisory> Read(string file) =>
        ForecastAdvisoryReader.Read(File.ReadAllBytes(file));
}
