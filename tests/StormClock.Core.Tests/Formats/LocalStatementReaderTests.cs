using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Formats;

public class LocalStatementReaderTests
{
    private static readonly Instant Issued = Instant.FromUtc(2027, 9, 21, 9, 4);

    [Fact]
    public void Reading_Statement_GivesAMessageForEachEventAndAction()
    {
        var read = Alerts(InventedMessages.Statement);
        Assert.Equal(
            [("KXYZ.HU.W.1002.2027/NEW", AlertMessageType.Alert), ("KXYZ.HU.A.1002.2027/UPG", AlertMessageType.Cancel), ("KXYZ.TR.W.1002.2027/CAN", AlertMessageType.Cancel)],
            read.Select(alert => (alert.Identifier, alert.Type)));
        Assert.All(read, alert => Assert.Equal(("KXYZ", Issued, AlertStatus.Actual), (alert.Sender, alert.Sent, alert.Status)));

        var info = Assert.Single(read[0].Infos);
        Assert.Equal("Hurricane Warning", info.Event);
        Assert.Equal(AlertBearing.HurricaneWarning, AlertBearings.Of(info));
        Assert.Equal((Issued, Instant.FromUtc(2027, 9, 21, 17, 15), null), (info.Onset, info.Expires, info.EventEnds));
        Assert.Equal("HURRICANE WARNING IN EFFECT", info.Headline);
    }

    [Fact]
    public void Reading_Zones_OpensRangesOverLineEnds()
    {
        var area = Assert.Single(Alerts(InventedMessages.Statement)[0].Infos[0].Areas);
        Assert.Equal(["TXZ437", "TXZ438", "TXZ439", "TXZ447", "LAZ001", "LAZ002"], area.Codes.Select(code => code.Code));
        Assert.All(area.Codes, code => Assert.Equal("UGC", code.Scheme));
        Assert.Equal("Quince Islands-Mainland Quince", area.Description);
    }

    [Fact]
    public void Reading_WindowOfWind_IsKeptInTheOfficesWords()
    {
        var parameters = Alerts(InventedMessages.Statement)[0].Infos[0].Parameters;
        Assert.Contains(new AlertGeocode("Window for Tropical Storm force winds", "Tuesday evening until Wednesday morning"), parameters);
        Assert.Contains(new AlertGeocode("Peak Wind Forecast", "50-65 mph with gusts to 80 mph"), parameters);
        Assert.Contains(new AlertGeocode("VTEC", "/O.NEW.KXYZ.HU.W.1002.270921T0904Z-000000T0000Z/"), parameters);
    }

    [Fact]
    public void Reading_Polygon_CountsHundredthsNorthAndWest() =>
        Assert.Equal(
            [new GeoPoint(30.37, -93.79), new GeoPoint(30.57, -93.75), new GeoPoint(30.68, -93.67), new GeoPoint(30.37, -93.79)],
            Alerts(InventedMessages.Statement)[2].Infos[0].Areas[0].Polygons[0].Ring);

    [Theory]
    [InlineData("CON", AlertMessageType.Update)]
    [InlineData("EXT", AlertMessageType.Update)]
    [InlineData("EXA", AlertMessageType.Update)]
    [InlineData("EXB", AlertMessageType.Update)]
    [InlineData("COR", AlertMessageType.Update)]
    [InlineData("ROU", AlertMessageType.Update)]
    [InlineData("EXP", AlertMessageType.Update)]
    [InlineData("CAN", AlertMessageType.Cancel)]
    public void Reading_Action_GivesTheTypeOfMessage(string action, AlertMessageType type) =>
        Assert.Equal(type, Alerts(InventedMessages.Statement.Replace("O.NEW", "O." + action, StringComparison.Ordinal))[0].Type);

    [Theory]
    [InlineData("/O.NEW", "/T.NEW", AlertStatus.Test)]
    [InlineData("...HURRICANE WARNING IN EFFECT...", "...TEST...HURRICANE WARNING...TEST...", AlertStatus.Test)]
    [InlineData("* WIND", "THIS_MESSAGE_IS_FOR_TEST_PURPOSES_ONLY", AlertStatus.Test)]
    [InlineData("* WIND", "* WIND tested the pier.", AlertStatus.Actual)]
    public void Reading_Test_IsMarked(string written, string other, AlertStatus status) =>
        Assert.Equal(status, Alerts(InventedMessages.Statement.Replace(written, other, StringComparison.Ordinal))[0].Status);

    [Theory]
    [InlineData("O.NEW.KXYZ.HU.W.1002.270921T0904Z", "O.NEW.KXYZ.HU.W.1002.279921T0904Z", 12, "no VTEC line")]
    [InlineData("O.NEW", "O.OLD", 12, "no VTEC line")]
    [InlineData("TXZ437>439", "TXZ439>437", 10, "zones")]
    [InlineData("TXZ437>439-447-LAZ001-", "", 12, "without a line of zones")]
    [InlineData("404 AM CDT", "404 AM LOC", 1, "date line")]
    public void Reading_WhatIsWrong_IsRefusedWithItsLine(string right, string wrong, int line, string reason)
    {
        var text = InventedMessages.Statement.Replace(right, wrong, StringComparison.Ordinal).Replace("WTUS84 KXYZ 210904", "", StringComparison.Ordinal);
        var fault = InventedMessages.ReadAll(text).Faults[0];
        Assert.Equal(line, fault.Line);
        Assert.Contains(reason, fault.Reason);
    }

    /// <summary>Texts name no earlier message; the same event of the same office replaces what was said of it before, where it speaks for the place.</summary>
    [Fact]
    public void Ledger_UpdateOfTheSameEvent_ReplacesOnlyWhereItSpeaks()
    {
        var ledger = With(AdvisoryLedger.Empty, Statement("NEW", "TXZ437>440", 9), Statement("CON", "TXZ437-438", 12), Statement("CAN", "TXZ440", 13));
        Assert.Equal("KXYZ.HU.W.1002.2027/CON", Assert.Single(ledger.Alerts(At(14), Site("TXZ437"))).Message.Identifier);
        Assert.Equal("KXYZ.HU.W.1002.2027/NEW", Assert.Single(ledger.Alerts(At(14), Site("TXZ439"))).Message.Identifier);
        Assert.Empty(ledger.Alerts(At(14), Site("TXZ440")));
        Assert.Equal(AlertState.Cancelled, Assert.Single(ledger.EndedAlerts(At(14), Site("TXZ440"))).State);
        Assert.Empty(ledger.Alerts(At(14), Site("TXZ999")));
    }

    [Fact]
    public void Ledger_AnotherNumberOrOffice_ReplacesNothing()
    {
        var other = Statement("CAN", "TXZ437", 12);
        var ledger = With(
            AdvisoryLedger.Empty,
            Statement("NEW", "TXZ437", 9),
            other.Replace(".1002.", ".1003.", StringComparison.Ordinal),
            other.Replace(".KXYZ.", ".KABC.", StringComparison.Ordinal));
        Assert.Single(ledger.Alerts(At(14), Site("TXZ437")));
    }

    [Fact]
    public void Ledger_UpgradedWatch_EndsAndTheWarningStands()
    {
        var watch = Statement("NEW", "TXZ437", 3).Replace(".HU.W.", ".HU.A.", StringComparison.Ordinal);
        var ledger = With(AdvisoryLedger.Empty, watch, InventedMessages.Statement);
        var alert = Assert.Single(ledger.Alerts(At(10), Site("TXZ437")));
        Assert.Equal((AlertBearing.HurricaneWarning, AlertWhere.Concerns), (alert.Bearing, alert.Where));
    }

    /// <summary>North Georgia, 4 May 2017: the advisory is upgraded in the first part and goes on in the second.</summary>
    [Fact]
    public void Reading_RealHighWind2017_TellsPartsApart()
    {
        var read = Alerts(File.ReadAllText(Path.Combine(Shared.Folder("nws-text-vtec"), "NPW_NPWFFC.txt")));
        Assert.Equal(
            ["KFFC.WI.Y.0008.2017/UPG", "KFFC.HW.W.0001.2017/NEW", "KFFC.WI.Y.0009.2017/NEW", "KFFC.WI.Y.0008.2017/CON"],
            read.Select(alert => alert.Identifier));
        var warning = Assert.Single(read[1].Infos);
        Assert.Equal(("High Wind Warning", Instant.FromUtc(2017, 5, 4, 13, 31), Instant.FromUtc(2017, 5, 4, 16, 0)), (warning.Event, warning.Onset!.Value, warning.EventEnds!.Value));
        Assert.Equal(11, warning.Areas[0].Codes.Count);
        Assert.Equal(Instant.FromUtc(2017, 5, 4, 21, 45), warning.Expires);
    }

    /// <summary>East Florida, 4 June 2022: one cancel with an account for each of twelve parts.</summary>
    [Fact]
    public void Reading_RealTropicalStatement2022_IsOneCancelOfTwelveParts()
    {
        var read = Assert.Single(Alerts(File.ReadAllText(Path.Combine(Shared.Folder("nws-text-vtec"), "TCV_TCVMLB.txt"))));
        Assert.Equal((AlertMessageType.Cancel, 12), (read.Type, read.Infos.Count));
        Assert.Contains(new AlertGeocode("Peak Wind Forecast", "10-20 mph with gusts to 30 mph"), read.Infos[0].Parameters);
    }

    private static List<AlertMessage> Alerts(string text)
    {
        var read = InventedMessages.ReadAll(text);
        Assert.True(read.IsGood, string.Join('\n', read.Faults));
        return [.. read.Value!.Cast<AlertMessage>()];
    }

    private static AdvisoryLedger With(AdvisoryLedger ledger, params string[] texts) =>
        texts.SelectMany(Alerts).Aggregate(ledger, (so, alert) => so.With(alert, alert.Sent));

    private static Instant At(int hour) => Instant.FromUtc(2027, 9, 21, hour, 0);

    private static Site Site(string code) => new("site", "Site", new GeoPoint(29, -95), default, new Dictionary<string, int>(), [code]);

    private static string Statement(string action, string zones, int hour) => FormattableString.Invariant($"""
        WTUS84 KXYZ 21{hour:00}00
        TCVXYZ

        {hour:00}00 UTC Tue Sep 21 2027

        {zones}-212315-
        /O.{action}.KXYZ.HU.W.1002.270921T0900Z-000000T0000Z/
        Quince-

        $$
        """);
}
