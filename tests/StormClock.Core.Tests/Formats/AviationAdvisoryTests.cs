using StormClock.Core.Advisories;
using StormClock.Core.Hazards;

namespace StormClock.Core.Tests.Formats;

public class AviationAdvisoryTests
{
    /// <summary>93 kt over 10 minutes are 100 kt over 1 minute; 50 m/s are 97.19 kt, over 1 minute 104.51 (factor 0.93 at sea, M).</summary>
    [Theory]
    [InlineData(InventedMessages.AviationText)]
    [InlineData(InventedMessages.AviationXml)]
    public void Reading_TextAndXml_GiveOneMinuteWindAndSaySo(string text)
    {
        var read = InventedMessages.One<CycloneAdvisory>(text);
        Assert.Equal(("XXXX-QUILL-2027", "QUILL", "13"), (read.StormId, read.StormName, read.Number));
        Assert.Equal(Instant.FromUtc(2027, 9, 21, 19, 0), read.IssuedAt);
        Assert.Equal(Instant.FromUtc(2027, 9, 21, 18, 0), read.Now.Valid);
        Assert.Equal((27.1, -73.1), (Math.Round(read.Now.Centre!.Value.LatDeg, 6), Math.Round(read.Now.Centre.Value.LonDeg, 6)));
        Assert.Equal(100, read.Now.MaxWindKt!.Value, 9);
        var next = Assert.Single(read.Forecast);
        Assert.Equal(Instant.FromUtc(2027, 9, 22, 0, 0), next.Valid);
        Assert.Equal(104.51, next.MaxWindKt!.Value, 2);
        Assert.Null(next.Radii34);
        Assert.Contains(read.Mends, mend => mend.Contains("10 minutes", StringComparison.Ordinal));
    }

    [Fact]
    public void Reading_RealExample_TextAndXmlTellTheSameTrack()
    {
        var folder = Shared.Folder("iwxxm");
        var xml = InventedMessages.One<CycloneAdvisory>(File.ReadAllText(Path.Combine(folder, "tc-advisory-A2-2.xml")));
        var text = InventedMessages.One<CycloneAdvisory>(File.ReadAllText(Path.Combine(folder, "tc-advisory-A2-2.tac")));
        Assert.Equal((xml.Id, 4), (text.Id, xml.Forecast.Count));
        foreach (var (one, other) in xml.Forecast.Prepend(xml.Now).Zip(text.Forecast.Prepend(text.Now)))
        {
            Assert.Equal((one.Valid, one.MaxWindKt), (other.Valid, other.MaxWindKt));
            Assert.Equal(one.Centre!.Value.LatDeg, other.Centre!.Value.LatDeg, 4);
            Assert.Equal(one.Centre.Value.LonDeg, other.Centre.Value.LonDeg, 4);
        }
    }

    /// <summary>A storm without radii still has a reach: it may not look like calm.</summary>
    [Fact]
    public void Track_WithoutRadii_StillHasItsWind()
    {
        var track = ForecastTrack.Of(InventedMessages.One<CycloneAdvisory>(InventedMessages.AviationText));
        Assert.All(track.Points, point => Assert.True(point is { MaxWindKt: > 64, Radii34: null, Gone: false }));
    }

    [Theory]
    [InlineData("permissibleUsage=\"OPERATIONAL\"", "permissibleUsage=\"NON-OPERATIONAL\"", "only operational")]
    [InlineData("uom=\"m/s\"", "uom=\"furlong\"", "unit")]
    [InlineData("27.1 -73.1", "127.1 -73.1", "latitude")]
    [InlineData("Lat Long", "Long Lat", "latitude")]
    [InlineData("2027-09-21T18:00:00Z", "noon", "phenomenonTime")]
    [InlineData("27.8 -73.83333333333333", "27.8 73.83333333333333", "jump")]
    [InlineData(":TropicalCycloneAdvisory", ":SIGMET", "no tropical cyclone advisory")]
    public void Xml_WhatIsWrong_IsRefusedWithItsReason(string right, string wrong, string reason) =>
        Assert.Contains(InventedMessages.ReadAll(InventedMessages.AviationXml.Replace(right, wrong, StringComparison.Ordinal)).Faults, fault => fault.Reason.Contains(reason, StringComparison.Ordinal));

    [Theory]
    [InlineData("TC:                   QUILL", "STATUS: TEST\nTC: QUILL", "marked TEST")]
    [InlineData("93KT", "93FT", "is no wind")]
    [InlineData("22/0000Z N2748", "22/2500Z N2748", "does not exist")]
    [InlineData("N2706", "N2766", "not on the globe")]
    [InlineData("20270921/1900Z", "20270231/1900Z", "does not exist")]
    [InlineData("OBS PSN:", "PSN OBS:", "missing")]
    public void Text_WhatIsWrong_IsRefusedWithItsReason(string right, string wrong, string reason) =>
        Assert.Contains(InventedMessages.ReadAll(InventedMessages.AviationText.Replace(right, wrong, StringComparison.Ordinal)).Faults, fault => fault.Reason.Contains(reason, StringComparison.Ordinal));
}
