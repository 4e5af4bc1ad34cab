using CsCheck;
using StormClock.Core.Advisories;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Advisories;

public class AdvisoryLedgerTests
{
    [Fact]
    public void Adding_SameMessageTwice_ChangesNothing()
    {
        var once = Alerts.Ledger(Cyclone("7", 0));
        Assert.Same(once, once.With(Cyclone("7", 0), Alerts.At(5)));
        Assert.Equal(Alerts.At(0), Assert.Single(once.All).Heard);
    }

    [Fact]
    public void Cyclones_Newest_StandsForEachStorm()
    {
        var ledger = Alerts.Ledger(Cyclone("8", 6), Cyclone("7", 0), Cyclone("10", 18), Cyclone("2", 3, "EP052027"));

        Assert.Equal(["10", "2"], ledger.Cyclones(Alerts.At(20)).Select(one => one.Number));
        Assert.Equal(["8", "2"], ledger.Cyclones(Alerts.At(17)).Select(one => one.Number));
        Assert.Equal(["7"], ledger.Cyclones(Alerts.At(0)).Select(one => one.Number));
        Assert.Empty(ledger.Cyclones(Alerts.At(-1)));
    }

    [Fact]
    public void Cyclones_Correction_ReplacesItsNumberInWhateverOrderTheyCome()
    {
        var first = Cyclone("7", 0);
        var corrected = first with { Corrected = true };
        var again = corrected with { CorrectionLetter = 'B' };
        Gen.Shuffle(new Advisory[] { first, corrected, again }).Sample(order =>
            Assert.Same(again, Assert.Single(Alerts.Ledger(order).Cyclones(Alerts.At(1)))));
    }

    [Fact]
    public void Cyclones_LateCorrectionOfAnEarlierNumber_DoesNotReplaceTheNewest()
    {
        var ledger = Alerts.Ledger(Cyclone("7", 0), Cyclone("8", 6), Cyclone("7", 7) with { Corrected = true });
        Assert.Equal("8", Assert.Single(ledger.Cyclones(Alerts.At(8))).Number);
    }

    [Fact]
    public void Cyclones_OlderThanFiveDays_StandNoLonger()
    {
        var ledger = Alerts.Ledger(Cyclone("7", 0));
        Assert.Single(ledger.Cyclones(Alerts.At(120)));
        Assert.Empty(ledger.Cyclones(Alerts.At(120.1)));
    }

    [Fact]
    public void WindProbabilities_Newest_StandsForEachStorm()
    {
        var ledger = Alerts.Ledger(Table("9", 6), Table("10", 12), Table("9", 13) with { Correction = 'A' }, Table("2", 3, "EP052027"), Cyclone("11", 14));

        Assert.Equal(["10", "2"], ledger.WindProbabilities(Alerts.At(20)).Select(one => one.Number));
        Assert.Equal(["9", "2"], ledger.WindProbabilities(Alerts.At(11)).Select(one => one.Number));
        Assert.Empty(ledger.WindProbabilities(Alerts.At(2)));
        Assert.Equal("10", Assert.Single(ledger.WindProbabilities(Alerts.At(12 + 120))).Number);
        Assert.Empty(ledger.WindProbabilities(Alerts.At(12 + 120.1)));
    }

    [Fact]
    public void WindProbabilities_Correction_ReplacesItsNumber()
    {
        var corrected = Table("9", 6) with { Correction = 'A' };
        Assert.Same(corrected, Assert.Single(Alerts.Ledger(corrected, Table("9", 6)).WindProbabilities(Alerts.At(7))));
    }

    [Fact]
    public void Cyclones_LastAdvisory_StandsUntilItsTrackEnds()
    {
        var ledger = Alerts.Ledger(Cyclone("7", 0), Cyclone("8", 6) with { Final = true });
        Assert.Equal("8", Assert.Single(ledger.Cyclones(Alerts.At(6 + 48))).Number);
        Assert.Empty(ledger.Cyclones(Alerts.At(6 + 48.1)));
    }

    [Fact]
    public void Notes_OfTheGarden_HoldAsLongAsTheyShould()
    {
        var wind = new WindNote("plot", "Ada", Alerts.At(0), Alerts.At(20), 25, null);
        var leave = new LeaveByNote("plot", "Ada", Alerts.At(1), Alerts.At(10));
        var other = new WindNote("elsewhere", "Bo", Alerts.At(0), Alerts.At(2), 25, null);
        var ledger = Alerts.Ledger(wind, leave, other);

        Assert.Equal([wind, leave], ledger.Notes(Alerts.At(11.9), "plot"));
        Assert.Equal([leave], ledger.Notes(Alerts.At(12), "plot"));
        Assert.Equal([leave], ledger.Notes(Alerts.At(33.9), "plot"));
        Assert.Empty(ledger.Notes(Alerts.At(34), "plot"));
    }

    [Fact]
    public void Notes_AllClear_WithdrawsTheEarlierOnesOfItsGarden()
    {
        var before = new WindNote("plot", "Ada", Alerts.At(0), Alerts.At(20), 25, null);
        var after = new WindNote("plot", "Ada", Alerts.At(2), Alerts.At(20), 25, null);
        var other = new WindNote("elsewhere", "Bo", Alerts.At(0), Alerts.At(2), 25, null);
        var ledger = Alerts.Ledger(before, after, other, new AllClearNote("plot", "Ada", Alerts.At(1)));

        Assert.Equal([before], ledger.Notes(Alerts.At(0.5), "plot"));
        Assert.Equal([after], ledger.Notes(Alerts.At(3), "plot"));
        Assert.Equal([other], ledger.Notes(Alerts.At(3), "elsewhere"));
    }

    /// <summary>Of its kind and its garden alone, and only what was made before it.</summary>
    [Fact]
    public void Notes_OneThatReplaces_TakesThePlaceOfTheEarlierOfItsKind()
    {
        var wind = new WindNote("plot", "Ada", Alerts.At(0), Alerts.At(4), 30, null);
        var rain = new RainNote("plot", "Ada", Alerts.At(0), Alerts.At(4), 90, null);
        var instead = new WindNote("plot", "Bo", Alerts.At(1), Alerts.At(9), 20, null) { Replaces = true };
        var later = new WindNote("plot", "Ada", Alerts.At(2), Alerts.At(12), 20, null);
        var ledger = Alerts.Ledger(wind, rain, instead, later);

        Assert.Equal([rain, wind], ledger.Notes(Alerts.At(0.5), "plot").OrderBy(note => note.Title));
        Assert.Equal([rain, instead, later], ledger.Notes(Alerts.At(3), "plot").OrderBy(note => note.Title == rain.Title ? 0 : 1).ThenBy(note => note.Made));
    }

    [Fact]
    public void Notes_WithATimeOfTheirOwn_HoldUntilThen()
    {
        var note = new WindNote("plot", "Ada", Alerts.At(0), Alerts.At(4), 30, null) { Expires = Alerts.At(30) };
        Assert.Single(Alerts.Ledger(note).Notes(Alerts.At(29.9), "plot"));
        Assert.Empty(Alerts.Ledger(note).Notes(Alerts.At(30), "plot"));
    }

    [Fact]
    public void Positions_Newest_StandsForEachStormAndACorrectionForItsNumber()
    {
        CyclonePosition Position(string storm, string number, double hour, char? correction = null) => new(storm, "X", number, Alerts.At(hour), new(20, -60), 50, null, null, correction);
        var ledger = Alerts.Ledger(Position("AL01", "3A", 3, 'A'), Position("AL01", "3A", 3), Position("AL01", "3", 0), Position("AL02", "7", 1));
        Assert.Equal([("AL01", "3A", (char?)'A'), ("AL02", "7", null)], ledger.Positions(Alerts.At(4)).Select(one => (one.StormId, one.Number, one.Correction)));
        Assert.Equal("3", ledger.Positions(Alerts.At(2))[0].Number);
    }

    [Fact]
    public void Notes_AllClear_NeverEndsAnOfficialAlert()
    {
        var ledger = Alerts.Ledger(Alerts.Message("a", 0, Alerts.Info(expires: 12)), new AllClearNote("plot", "Ada", Alerts.At(1)));
        Assert.Single(ledger.Alerts(Alerts.At(2), Alerts.Home));
    }

    [Fact]
    public void NewestContent_LeavesOutNotesAndWhatIsNotYetIssued()
    {
        var ledger = Alerts.Ledger(
            Cyclone("7", 0), Alerts.Message("a", 4), Cyclone("8", 6), new AllClearNote("plot", "Ada", Alerts.At(5)));
        Assert.Equal(Alerts.At(4), ledger.NewestContent(Alerts.At(5.5)));
        Assert.Null(AdvisoryLedger.Empty.NewestContent(Alerts.At(0)));
        Assert.Null(ledger.NewestContent(Alerts.At(-1)));
    }

    /// <summary>What stands depends on what was said, not on the order in which it reached us.</summary>
    [Fact]
    public void Queries_AnyOrderOfHearing_GiveTheSame()
    {
        var alert = Alerts.Message("a", 0, Alerts.Info(expires: 30));
        var update = Alerts.Message("b", 3, Alerts.Info("Hurricane Warning", expires: 30), AlertMessageType.Update, alert);
        var cancel = Alerts.Message("c", 9, null, AlertMessageType.Cancel, alert, update);
        Advisory[] all = [alert, update, cancel, Cyclone("7", 0), Cyclone("8", 6), Cyclone("7", 0) with { Corrected = true }];
        Gen.Select(Gen.Shuffle(all), Gen.Double[-1, 40]).Sample((order, hours) =>
        {
            var (one, other) = (Alerts.Ledger(all), Alerts.Ledger(order));
            var now = Alerts.At(hours);
            Assert.Equal(one.Cyclones(now), other.Cyclones(now));
            Assert.Equal(one.Alerts(now, Alerts.Home), other.Alerts(now, Alerts.Home));
            Assert.Equal(one.EndedAlerts(now, Alerts.Home), other.EndedAlerts(now, Alerts.Home));
        });
    }

    private static WindProbabilityAdvisory Table(string number, double hours, string storm = "AL152027") =>
        new(storm, "QUELLE", number, Alerts.At(hours), Alerts.At(hours) - Duration.FromHours(3), []);

    private static CycloneAdvisory Cyclone(string number, double issued, string storm = "AL152027")
    {
        var point = new CyclonePoint(Alerts.At(issued), new GeoPoint(24, -70), 60, 75, null, null, null);
        return new CycloneAdvisory(
            storm, "QUELLE", number, Alerts.At(issued), Alerts.At(issued), point, null,
            [point with { Valid = Alerts.At(issued + 24) }, point with { Valid = Alerts.At(issued + 48) }]);
    }
}
