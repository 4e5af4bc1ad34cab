using StormClock.Core.Advisories;
using StormClock.Core.Formats.Cap;

namespace StormClock.Core.Tests.Formats;

/// <summary>Real alerts of many senders. The counts of elements were taken from the files with grep.</summary>
public class RealCapTests
{
    [Fact]
    public void Reading_EveryRealAlert_IsGood()
    {
        var read = Shared.Files("cap").Select(file => (file, result: CapReader.Read(File.ReadAllBytes(file)))).ToList();
        Assert.Equal(30, read.Count);
        Assert.All(read, one => Assert.True(one.result.IsGood, $"{one.file}: {string.Join(' ', one.result.Faults)}"));

        var alerts = read.Select(one => one.result.Value!).ToList();
        Assert.Equal(1, alerts.Count(alert => alert.Type == AlertMessageType.Cancel));
        Assert.Equal(8, alerts.Count(alert => alert.Type == AlertMessageType.Update));
        Assert.All(alerts.SelectMany(alert => alert.Infos), info => Assert.NotNull(info.Expires));
        Assert.All(
            alerts.SelectMany(alert => alert.Infos).SelectMany(info => info.Areas).SelectMany(area => area.Polygons),
            polygon => Assert.True(polygon.Ring.Count >= 4 && polygon.Ring[0] == polygon.Ring[^1]));
    }

    /// <summary>Great Falls, 30 August 2010: a VTEC end, and an expiry that is the same moment by chance.</summary>
    [Fact]
    public void Reading_FlashFloodWatch2010_TakesTheVtecEnd()
    {
        var alert = Real("cap/google-weather.xml");
        Assert.Equal(Instant.FromUtc(2010, 8, 30, 18, 0), alert.Infos[0].EventEnds);
        Assert.Null(alert.Infos[0].Onset);
        Assert.Contains(new AlertGeocode("UGC", "MTZ014"), alert.Infos[0].Areas[0].Codes);
    }

    [Theory]
    [InlineData("google-empty_weather_index.atom.xml", "Atom feed")]
    [InlineData("google-no_id.atom.xml", "Atom feed")]
    [InlineData("google-xee.xml", "DTD")]
    [InlineData("taiwan-404-page-instead-of-cap.html", "HTML page")]
    public void Reading_WhatIsNoAlert_SaysWhatItIs(string file, string reason)
    {
        var result = CapReader.Read(File.ReadAllBytes(Path.Combine(Shared.Folder("cap-invalid"), file)));
        Assert.Contains(reason, Assert.Single(result.Faults).Reason);
    }

    /// <summary>Without scope, or without any info, an alert still says who, what and when.</summary>
    [Theory]
    [InlineData("google-invalid.xml", 1)]
    [InlineData("google-no_optional_fields.xml", 0)]
    public void Reading_AlertThatLacksElements_IsGood(string file, int infos) =>
        Assert.Equal(infos, Real("cap-invalid/" + file).Infos.Count);

    /// <summary>The examples in appendix A of the standard, four of each version.</summary>
    [Fact]
    public void Reading_ExamplesOfTheStandard_ReadsAllVersions()
    {
        Assert.Equal(12, Shared.Files("cap-standard-examples").Count);
        foreach (var file in Shared.Files("cap-standard-examples"))
        {
            var result = CapReader.Read(File.ReadAllBytes(file));
            Assert.True(result.IsGood, $"{file}: {string.Join(' ', result.Faults)}");
        }
    }

    /// <summary>Version 1.0 writes "name=value" where the later ones have two elements.</summary>
    [Fact]
    public void Reading_FirstVersion_SplitsNamesAndValues()
    {
        var info = Assert.Single(Real("cap-standard-examples/cap1.0_appendix_a2.xml").Infos);
        Assert.Equal([new AlertGeocode("same", "SVR")], info.EventCodes);
        Assert.Equal(["006109", "006009", "006003"], info.Areas[0].Codes.Select(code => code.Code));
    }

    private static AlertMessage Real(string path) =>
        CapReader.Read(File.ReadAllBytes(Path.Combine(Shared.Folder(Path.GetDirectoryName(path)!), Path.GetFileName(path)))).Value!;
}
