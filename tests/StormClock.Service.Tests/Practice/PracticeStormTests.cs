using StormClock.Core.Advisories;
using StormClock.Core.Formats.Cap;
using StormClock.Core.Formats.ForecastAdvisory;
using StormClock.Core.Units;
using StormClock.Service.Books;

namespace StormClock.Service.Tests.Practice;

public class PracticeStormTests
{
    /// <summary>The house lot of the practice garden Tern Hook.</summary>
    private static readonly GeoPoint Garden = new(30.08, -84.16);

    private static readonly Lazy<List<CycloneAdvisory>> Storm = new(() => [.. Directory.GetFiles(Folder, "*.txt").Order(StringComparer.Ordinal).Select(Advisory)]);

    private static string Folder => Path.Combine(ConfigFiles.Folder, "practice", "storm");

    private static CycloneAdvisory Advisory(string path)
    {
        var read = ForecastAdvisoryReader.Read(File.ReadAllBytes(path));
        Assert.True(read.IsGood, $"{path}: {string.Join("\n", read.Faults)}");
        return read.Value!;
    }

    [Fact]
    public void Storm_EveryAdvisory_ReadsAndFollowsTheOneBeforeBySixHours()
    {
        var storm = Storm.Value;

        Assert.Equal(24, storm.Count);
        Assert.Equal(Enumerable.Range(1, 24).Select(number => number.ToString()), storm.Select(advisory => advisory.Number));
        Assert.All(storm, advisory => Assert.Equal("AL902027", advisory.StormId));
        Assert.Equal(Instant.FromUtc(2027, 9, 19, 9, 0), storm[0].Issued);
        Assert.All(storm.Zip(storm.Skip(1)), pair => Assert.Equal(Duration.FromHours(6), pair.Second.Issued - pair.First.Issued));
        Assert.Equal([24], storm.Where(advisory => advisory.Final).Select(advisory => int.Parse(advisory.Number)));
    }

    [Fact]
    public void Storm_EveryText_SaysThatItIsPracticeAndNamesNoRealOffice()
    {
        foreach (var path in Directory.GetFiles(Folder, "*.txt"))
        {
            var text = File.ReadAllText(path);
            Assert.StartsWith("PRACTICE MESSAGE - INVENTED STORM\n", text);
            Assert.Contains("STORMCLOCK PRACTICE CENTRE", text);
            Assert.DoesNotContain("NWS", text);
            Assert.DoesNotContain("KNHC", text);
        }
    }

    [Fact]
    public void Storm_GrowsToHurricanePassesNearAndWeakensInland()
    {
        var storm = Storm.Value;

        Assert.Equal((30.0, 105.0, 30.0), (storm[0].Now.MaxWindKt, storm.Max(advisory => advisory.Now.MaxWindKt), storm[^1].Now.MaxWindKt));
        Assert.Equal(CycloneNature.PostTropical, storm[^1].Now.Nature);
        var nearest = storm.MinBy(advisory => DistanceNmi(advisory.Now.Centre!.Value))!;
        Assert.InRange(DistanceNmi(nearest.Now.Centre!.Value), 15, 45);
        Assert.True(nearest.Now.Radii64!.Value.NeNmi > DistanceNmi(nearest.Now.Centre!.Value));
    }

    /// <summary>By the positions and radii at issue, joined by straight lines, in the quadrant in which the garden lies.</summary>
    [Fact]
    public void Storm_ReachesTheGardenFourDaysAfterTheFirstAdvisory()
    {
        var (arrives, leaves) = (Wind34().First(), Wind34().Last());

        Assert.InRange((arrives - Storm.Value[0].Issued).TotalDays, 3.5, 4.5);
        Assert.InRange((leaves - arrives).TotalHours, 12, 30);
    }

    [Fact]
    public void Storm_ForecastErrors_GrowWithLeadAndStayPlausible()
    {
        var storm = Storm.Value;
        var errors = from advisory in storm
                     from point in advisory.Forecast
                     let later = storm.Find(other => other.Synoptic == point.Valid)
                     where later?.Before?.Centre is not null && point.Centre is not null
                     select (Lead: (int)(point.Valid - advisory.Synoptic).TotalHours, Nmi: Distance(point.Centre!.Value, later.Before!.Centre!.Value));
        var mean = errors.GroupBy(error => error.Lead).ToDictionary(same => same.Key, same => same.Average(error => error.Nmi));

        Assert.InRange(mean[12], 3, 25);
        Assert.InRange(mean[48], 25, 75);
        Assert.InRange(mean[96], mean[48], 150);
    }

    [Fact]
    public void Alerts_WatchWarningAndCancel_StandInStepWithTheWind()
    {
        var alerts = Directory.GetFiles(Folder, "*.xml").Order(StringComparer.Ordinal).Select(Alert).ToList();
        var arrives = Wind34().First();

        Assert.Equal(["Hurricane Watch", "Hurricane Warning", "Cancel of Hurricane Warning"], alerts.Select(alert => alert.Title));
        Assert.Equal([AlertMessageType.Alert, AlertMessageType.Update, AlertMessageType.Cancel], alerts.Select(alert => alert.Type));
        Assert.All(alerts, alert => Assert.Equal(("practice@stormclock.invalid", AlertStatus.Exercise), (alert.Sender, alert.Status)));
        Assert.All(alerts, alert => Assert.StartsWith("PRACTICE: ", alert.Infos[0].Headline));
        Assert.InRange((arrives - alerts[0].Sent).TotalHours, 45, 51);
        Assert.InRange((arrives - alerts[1].Sent).TotalHours, 34, 38);
        Assert.InRange((alerts[2].Sent - Wind34().Last()).TotalHours, 3, 24);
        Assert.Equal([new AlertReference(alerts[0].Sender, alerts[0].Identifier, alerts[0].Sent)], alerts[1].References);
        Assert.Equal([new AlertReference(alerts[1].Sender, alerts[1].Identifier, alerts[1].Sent)], alerts[2].References);
        Assert.All(alerts, alert => Assert.True(alert.Infos[0].Expires > alert.Sent));
    }

    [Fact]
    public void Ledger_WithThePracticeAlerts_HasThemStandAtBothSitesOfTheGarden()
    {
        var book = GardenReader.Read(File.ReadAllText(Path.Combine(ConfigFiles.Folder, "practice", "garden-tern-hook.yaml")), "tern-hook").Value!;
        var ledger = Directory.GetFiles(Folder, "*.xml").Select(Alert).Aggregate(AdvisoryLedger.Empty, (known, alert) => known.With(alert with { Status = AlertStatus.Actual }, alert.Sent));

        Assert.All(book.Sites, site =>
        {
            Assert.Empty(ledger.Alerts(Instant.FromUtc(2027, 9, 21, 8, 0), site));
            Assert.Equal(["Hurricane Watch"], ledger.Alerts(Instant.FromUtc(2027, 9, 21, 12, 0), site).Select(alert => alert.Message.Title));
            Assert.Equal(["Hurricane Warning"], ledger.Alerts(Instant.FromUtc(2027, 9, 23, 12, 0), site).Select(alert => alert.Message.Title));
            Assert.Empty(ledger.Alerts(Instant.FromUtc(2027, 9, 24, 16, 0), site));
        });
    }

    private static AlertMessage Alert(string path)
    {
        var read = CapReader.Read(File.ReadAllBytes(path));
        Assert.True(read.IsGood, $"{path}: {string.Join("\n", read.Faults)}");
        return read.Value!;
    }

    /// <summary>The hours with 34 kt at the garden.</summary>
    private static List<Instant> Wind34()
    {
        var hours = new List<Instant>();
        foreach (var (from, to) in Storm.Value.Zip(Storm.Value.Skip(1)))
        {
            for (var hour = 0; hour < 6; hour++)
            {
                var centre = Between(from.Now.Centre!.Value, to.Now.Centre!.Value, hour / 6.0);
                var reach = (Reach(from, centre) * (6 - hour) / 6) + (Reach(to, centre) * hour / 6);
                if (Distance(centre, Garden) <= reach) hours.Add(from.Issued + Duration.FromHours(hour));
            }
        }

        return hours;
    }

    private static GeoPoint Between(GeoPoint a, GeoPoint b, double share) =>
        new(a.LatDeg + ((b.LatDeg - a.LatDeg) * share), a.LonDeg + ((b.LonDeg - a.LonDeg) * share));

    private static double Reach(CycloneAdvisory advisory, GeoPoint centre)
    {
        var radii = advisory.Now.Radii34 ?? default;
        return (Garden.LatDeg > centre.LatDeg, Garden.LonDeg > centre.LonDeg) switch
        {
            (true, true) => radii.NeNmi,
            (false, true) => radii.SeNmi,
            (false, false) => radii.SwNmi,
            _ => radii.NwNmi,
        };
    }

    private static double DistanceNmi(GeoPoint at) => Distance(at, Garden);

    /// <summary>Flat, which is near enough within the few hundred miles that count here.</summary>
    private static double Distance(GeoPoint a, GeoPoint b) =>
        60 * Math.Sqrt(Math.Pow(a.LatDeg - b.LatDeg, 2) + Math.Pow((a.LonDeg - b.LonDeg) * Math.Cos((a.LatDeg + b.LatDeg) / 360 * Math.PI), 2));
}
