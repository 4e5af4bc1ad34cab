using StormClock.Core;
using StormClock.Service.Books;
using StormClock.Service.Commands;
using StormClock.Service.Settings;
using StormClock.Service.Tests.Books;

namespace StormClock.Service.Tests.Commands;

public class CheckReportTests
{
    private static GardenFile File(string name, string text)
    {
        var read = GardenReader.Read(text, name);
        return new GardenFile(name, read, read.Value);
    }

    private static CheckReport Report(string settings, params GardenFile[] gardens) => CheckReport.Of("config/stormclock.yaml", SettingsReader.Read(settings), gardens, new(2027, 9, 1));

    [Fact]
    public void Of_FaultsInSeveralFiles_NamesEachByFileAndLine()
    {
        var report = Report(
            "poll_calm_minutes: 0\ndata_folder: ~",
            File("config/gardens/a.yaml", SampleBook.Good.Replace("count: 3", "count: 0").Replace("area: porch", "area: poch")),
            File("config/gardens/b.yaml", ""));

        Assert.False(report.IsGood);
        Assert.Equal(
            ["config/stormclock.yaml:1:", "config/stormclock.yaml:2:", "config/gardens/a.yaml:27:", "config/gardens/a.yaml:28:", "config/gardens/b.yaml:1:"],
            report.Faults.Select(fault => fault[..(fault.IndexOf(": ", StringComparison.Ordinal) + 1)]));
        Assert.Contains("did you mean 'porch'?", report.Faults[2]);
    }

    [Fact]
    public void Of_OneBadFile_StillSaysWhatTheGoodOnesWouldDo()
    {
        var report = Report("", File("a.yaml", "oops"), File("b.yaml", SampleBook.Good));

        Assert.Single(report.Faults);
        Assert.Contains("garden Quay garden (b.yaml)", report.Would);
        Assert.DoesNotContain(report.Would, line => line.Contains("a.yaml"));
    }

    [Fact]
    public void Of_NothingConfigured_SaysWhatThatMeans()
    {
        var report = Report("");

        Assert.True(report.IsGood);
        Assert.Contains("  no mail settings: messages are written as .eml files", report.Would);
        Assert.Contains("  no address that phones can reach: messages carry no links", report.Would);
        Assert.Contains("  no feeds: nothing is heard of any forecast unless it is entered by hand", report.Would);
        Assert.Contains("no garden books: nothing would be planned", report.Would);
    }

    [Fact]
    public void Of_Replies_SaysWhereAnswersAreReadAndNeverThePassword()
    {
        const string settings = "mail: {host: mail.example.org, port: 587, security: starttls, from: garden@example.org}\n"
            + "replies: {host: imap.example.org, port: 993, security: tls, user: garden, password_env: BOX, address: answers@example.org, move_to: Settled}\n";
        Assert.Contains(
            "  answers by mail to answers@example.org are read from the folder INBOX at imap.example.org:993 (tls, user garden, password from the variable BOX) every 2 minutes, then moved to Settled",
            Report(settings).Would);
        Assert.DoesNotContain(Report(settings).Would, line => line.Contains("no mailbox for answers", StringComparison.Ordinal));
        Assert.Contains("  no mailbox for answers either ('replies'): work is marked on the box's own page", Report("").Would);
    }

    [Theory]
    [InlineData("quay/ines", 0)]
    [InlineData("quay/nobody", 1)]
    [InlineData("elsewhere/ines", 1)]
    public void Of_WebhookOfAPerson_MustBeInABook(string person, int faults)
    {
        var report = Report($"poll_calm_minutes: 20\nwebhooks:\n  - {{person: {person}, url: \"https://gateway.example.org/hidden\", secret_env: GATE}}", File("a.yaml", SampleBook.Good));

        Assert.Equal(faults, report.Faults.Count);
        Assert.All(report.Faults, fault => Assert.StartsWith($"config/stormclock.yaml:3: no garden book has the person '{person}'", fault, StringComparison.Ordinal));
        Assert.Contains($"  messages of {person} are also posted to gateway.example.org, signed with the secret from the variable GATE", report.Would);
    }

    [Fact]
    public void Of_AddressOnThisBoxOnly_IsNoAddressForPhones() =>
        Assert.Contains("  no address that phones can reach: messages carry no links", Report("pages: {address: \"http://localhost:8427\"}").Would);

    [Fact]
    public void Of_FullSettings_NamesThemWithoutSecrets()
    {
        var report = Report("""
            mail: {host: mail.example.org, port: 465, security: tls, user: garden, password_env: GARDEN_MAIL, from: garden@example.org}
            pages: {address: https://garden.example.org}
            feeds: [{name: alerts, kind: url, at: "https://example.org/a.atom"}, {name: texts, kind: folder, at: incoming}]
            quiet_hours: {from: "21:30", to: "6:30", zone: America/Chicago}
            poll_storm_minutes: 5
            """);

        Assert.Contains("  mail from garden@example.org through mail.example.org:465 (tls, user garden, password from the variable GARDEN_MAIL)", report.Would);
        Assert.Contains("  links in messages begin with https://garden.example.org/", report.Would);
        Assert.Contains("  feed alerts: https://example.org/a.atom, looked at every 30 minutes, every 5 minutes in a storm, without a contact; the offices like to know whom to write to", report.Would);
        Assert.Contains("  feed texts: folder incoming, looked at every 30 minutes, every 5 minutes in a storm", report.Would);
        Assert.Contains("  quiet from 21:30 to 6:30 (America/Chicago), urgent messages apart", report.Would);
    }

    /// <summary>Limits: 7.6 / 11.6 m/s are 14.8 / 22.5 kt and 17.0 / 25.9 mph; 18 / 24 mph are 15.6 / 20.9 kt.</summary>
    [Fact]
    public void Of_GoodGarden_SaysSitesLimitsPeopleAndWork()
    {
        Assert.Equal(
            [
                "garden Quay garden (quay.yaml)",
                "  id quay, times in America/New_York",
                "  site Home: 30.100 N, 84.200 W, open coast, alerts by area and code XQ001, 9 min to Field",
                "  site Field: 30.200 N, 84.300 W, open farmland, alerts by area only, 9 min to Home",
                "  Field has no codes, so an alert that names counties or zones alone only may concern it. One of these is likely its county;",
                "  the nearest middle is not always the right one: look it up at the weather office, and add the forecast zone that its page names (such as FLZ065)",
                "    codes: [FLC129, \"012129\"]   # 2 n mi to the middle of its people",
                "    codes: [FLC073, \"012073\"]   # 16 n mi to the middle of its people",
                "    codes: [FLC065, \"012065\"]   # 28 n mi to the middle of its people",
                "  sheet work stops at 15 kt sustained or 23 kt gust (17 / 26 mph)",
                "  ladder work stops at 16 kt sustained or 21 kt gust (18 / 24 mph)",
                "  saw work stops at 17 kt sustained or 22 kt gust (20 / 25 mph)",
                "  carry work stops at 26 kt sustained or 35 kt gust (30 / 40 mph)",
                "  ground work stops at 29 kt sustained or 39 kt gust (34 / 45 mph)",
                "  Ines, gardener: ines@example.org",
                "  Otto, helper: no address, gets no messages",
                "  2 items, 5 jobs: 115 min for one person, 30 min for 2 people",
            ],
            Report("", File("quay.yaml", SampleBook.Good)).Would.SkipWhile(line => !line.StartsWith("garden", StringComparison.Ordinal)).Take(17));
    }

    /// <summary>Palms are left alone, and that is just what must be said of them.</summary>
    [Fact]
    public void Of_KindToBewareOf_SaysSoThoughNothingIsDoneWithIt()
    {
        var report = Report("", File("quay.yaml", SampleBook.Good + "\n  - {id: palm, kind: palm, area: rows, count: 1}\n"));

        var line = Assert.Single(report.Would, line => line.Contains("Palm, Rows", StringComparison.Ordinal));
        Assert.Contains("No job. Take care: Green fronds stay on.", line);
        Assert.Contains("licensed arborist", line);
    }

    [Theory]
    [InlineData("units: metric", "  saw work stops at 17 kt sustained or 22 kt gust (32 / 40 km/h)")]
    [InlineData("units: metric-knots", "  saw work stops at 17 kt sustained or 22 kt gust")]
    public void Of_OtherUnits_SpeaksThem(string units, string line) =>
        Assert.Contains(line, Report("", File("quay.yaml", SampleBook.Good.Replace("units: us", units))).Would);

    [Fact]
    public void Of_LoosenedLimitAndPractice_SaysSo()
    {
        var report = Report("", File("quay.yaml", SampleBook.Good.Replace("sustained: 18 mph, gust: 24 mph gust", "sustained: 25 mph, gust: 35 mph").Replace("units: us", "units: us, practice: true")));

        Assert.Contains(report.Would, line => line.StartsWith("  ladder work", StringComparison.Ordinal) && line.EndsWith(", which is more wind than usual", StringComparison.Ordinal));
        Assert.Contains("  id quay, times in America/New_York; practice: rehearsed, never served or mailed for", report.Would);
    }

    [Fact]
    public void Of_FaultWithoutLine_NamesItsPlace()
    {
        var report = CheckReport.Of("s.yaml", ReadResult.Bad<StormSettings>([new ReadFault("mail/user", "no password")]), [], new(2027, 9, 1));

        Assert.Equal(["s.yaml: mail/user: no password"], report.Faults);
    }
}
