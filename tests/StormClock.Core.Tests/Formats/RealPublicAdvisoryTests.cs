using StormClock.Core.Advisories;
using StormClock.Core.Formats.ForecastAdvisory;
using StormClock.Core.Formats.PublicAdvisory;

namespace StormClock.Core.Tests.Formats;

/// <summary>The public advisories of ten storms beside the forecast/advisories of the same number, which give the same facts in knots.</summary>
public class RealPublicAdvisoryTests
{
    [Fact]
    public void Reading_PublicAdvisory_AgreesWithTheForecastAdvisoryOfTheSameNumber()
    {
        var (compared, wrong) = (0, new List<string>());
        foreach (var file in Shared.Files("nhc-tcp", "*.txt"))
        {
            var other = file.Replace("nhc-tcp", "nhc-tcm", StringComparison.Ordinal);
            if (!File.Exists(other)) continue;
            var told = PublicAdvisoryReader.Read(File.ReadAllBytes(file)).Value!;
            var full = ForecastAdvisoryReader.Read(File.ReadAllBytes(other)).Value!;
            compared++;
            Assert.Equal(full.StormId, told.StormId);
            Assert.Equal(full.Number, told.Number);
            Assert.False(told.Intermediate);
            if (told.MaxWindKt != full.Now.MaxWindKt || told.Centre != full.Now.Centre || told.IssuedAt != full.IssuedAt)
            {
                wrong.Add($"{file[^40..]}: {told.MaxWindKt} kt at {told.Centre}, {told.IssuedAt}; forecast/advisory {full.Now.MaxWindKt} kt at {full.Now.Centre}, {full.IssuedAt}");
            }
        }

        Assert.True(wrong.Count == 0, $"{wrong.Count} of {compared} differ:\n{string.Join('\n', wrong)}");
        Assert.Equal(271, compared);
    }

    [Fact]
    public void Reading_IntermediateAdvisory_HasItsLetter()
    {
        var read = Shared.Files("nhc-tcp").Where(file => Path.GetFileName(file)[3] is 'A' or 'B').Select(file => PublicAdvisoryReader.Read(File.ReadAllBytes(file)).Value!).ToList();
        Assert.Equal(243, read.Count);
        Assert.All(read, one => Assert.True(one.Intermediate));
    }
}
