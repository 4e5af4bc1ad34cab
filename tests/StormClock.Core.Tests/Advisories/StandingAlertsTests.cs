using StormClock.Core.Advisories;

namespace StormClock.Core.Tests.Advisories;

public class StandingAlertsTests
{
    private static readonly AlertMessage First = Alerts.Message("a", 0, Alerts.Info(expires: 8, eventEnds: 20));

    [Fact]
    public void Alert_BeforeItsEventEnds_StandsPastTheExpiryOfTheMessage()
    {
        var stands = Assert.Single(Standing(10, First));
        Assert.Equal((AlertState.Stands, Alerts.At(20)), (stands.State, stands.Until));
        Assert.Equal((AlertWhere.Concerns, AlertBearing.TropicalStormWarning), (stands.Where, stands.Bearing));
        Assert.Same(First.Infos[0], stands.Info);
        Assert.Empty(Standing(-0.1, First));
    }

    [Fact]
    public void Alert_AfterItsEventEnds_IsOver()
    {
        Assert.Empty(Standing(20, First));
        var ended = Assert.Single(Ended(20, First));
        Assert.Equal((AlertState.Over, Alerts.At(20)), (ended.State, ended.Until));
    }

    [Fact]
    public void Alert_ExpiredWithoutEventEnd_HasLapsedWhichIsNoOfficialEnd()
    {
        var alert = Alerts.Message("a", 0, Alerts.Info(expires: 8));
        Assert.Equal(AlertState.Lapsed, Assert.Single(Ended(8, alert)).State);
        Assert.Single(Standing(7.9, alert));
    }

    [Fact]
    public void Alert_WithoutAnyEnd_StandsForFiveDays()
    {
        var alert = Alerts.Message("a", 0, Alerts.Info());
        Assert.Single(Standing(119, alert));
        Assert.Equal((AlertState.Lapsed, Alerts.At(120)), Assert.Single(Ended(120, alert)) is var one ? (one.State, one.Until) : default);
    }

    [Fact]
    public void Cancel_ByReference_EndsItAsCancelledAndNotAsOver()
    {
        var cancel = Alerts.Message("c", 5, null, AlertMessageType.Cancel, First);
        Assert.Single(Standing(4.9, First, cancel));
        Assert.Empty(Standing(5, First, cancel));
        Assert.Equal((AlertState.Cancelled, Alerts.At(5)), Assert.Single(Ended(30, First, cancel)) is var one ? (one.State, one.Until) : default);
    }

    [Fact]
    public void Cancel_AfterTheEventEnded_LeavesItOver()
    {
        var cancel = Alerts.Message("c", 25, null, AlertMessageType.Cancel, First);
        Assert.Equal(AlertState.Over, Assert.Single(Ended(30, First, cancel)).State);
    }

    [Fact]
    public void Cancel_OfAnotherSendingOfTheSameIdentifier_EndsNothing()
    {
        var reused = Alerts.Message("a", 3, Alerts.Info(eventEnds: 20));
        var cancel = Alerts.Message("c", 5, null, AlertMessageType.Cancel, First);
        Assert.Equal([reused], Standing(6, First, reused, cancel).Select(one => one.Message));
    }

    [Fact]
    public void Cancel_ByAnotherSenderOrWithoutReference_EndsNothing()
    {
        var stranger = Alerts.Message("c", 5, null, AlertMessageType.Cancel, First) with { Sender = "someone@example.net" };
        var nameless = Alerts.Message("d", 5, null, AlertMessageType.Cancel);
        Assert.Single(Standing(6, First, stranger, nameless));
    }

    [Fact]
    public void Update_ByReference_ReplacesAndIsTheOnlyOneTold()
    {
        var update = Alerts.Message("b", 4, Alerts.Info("Hurricane Warning", eventEnds: 30), AlertMessageType.Update, First);
        var stands = Assert.Single(Standing(5, First, update));
        Assert.Equal(("b", AlertBearing.HurricaneWarning), (stands.Message.Identifier, stands.Bearing));
        Assert.Empty(Ended(5, First, update));
        Assert.Equal("b", Assert.Single(Ended(31, First, update)).Message.Identifier);
    }

    /// <summary>Some senders go on under the same identifier and name no reference.</summary>
    [Fact]
    public void Update_UnderTheSameIdentifierWithoutReference_Continues()
    {
        var update = Alerts.Message("a", 4, Alerts.Info("Hurricane Warning", eventEnds: 30), AlertMessageType.Update);
        Assert.Same(update, Assert.Single(Standing(5, First, update)).Message);
        Assert.Empty(Ended(5, First, update));
    }

    [Fact]
    public void Update_UnderTheSameIdentifierWithoutReference_EndsNothing()
    {
        var clear = Alerts.Message("a", 4, Alerts.Info(eventEnds: 30, responses: [AlertResponse.AllClear]), AlertMessageType.Update);
        var stranger = Alerts.Message("a", 4, Alerts.Info(eventEnds: 30), AlertMessageType.Update) with { Sender = "someone@example.net" };
        var again = Alerts.Message("a", 4, Alerts.Info(eventEnds: 30));
        Assert.Contains(Standing(5, First, clear), one => one.Message == First);
        Assert.Equal(2, Standing(5, First, stranger).Count);
        Assert.Equal(2, Standing(5, First, again).Count);
    }

    /// <summary>A list that has let an alert drop says nothing: it stands until its own end.</summary>
    [Fact]
    public void Alert_MissingFromTheListHeardLater_StillStands()
    {
        var other = Alerts.Message("b", 3, Alerts.Info("Flood Warning", eventEnds: 40));
        var ledger = Alerts.Ledger(First).With(other, Alerts.At(3)).With(other, Alerts.At(6));
        Assert.Equal(["a", "b"], ledger.Alerts(Alerts.At(10), Alerts.Home).Select(one => one.Message.Identifier));
    }

    /// <summary>An alert whose message lapsed before it was even sent is no ended event.</summary>
    [Fact]
    public void Alert_ExpiredBeforeItWasSent_HasLapsedWhichIsNoOfficialEnd() =>
        Assert.Equal(AlertState.Lapsed, Assert.Single(Ended(1, Alerts.Message("a", 0, Alerts.Info(expires: -2)))).State);

    [Fact]
    public void Alert_ExpiringBeforeItsOnset_StandsToTheEndOfItsEvent() =>
        Assert.Single(Standing(30, Alerts.Message("a", 0, Alerts.Info(expires: 8, eventEnds: 36) with { Onset = Alerts.At(24) })));

    [Fact]
    public void Alert_OverMonths_StandsAllTheTime() =>
        Assert.Single(Standing(24 * 59, Alerts.Message("a", 0, Alerts.Info(eventEnds: 24 * 60))));

    /// <summary>The same warning sent twice with other words or another identifier is two warnings, never made one by its text.</summary>
    [Fact]
    public void Alerts_WithTheSameText_AreNotMadeOne() =>
        Assert.Equal(2, Standing(1, First, Alerts.Message("b", 0, Alerts.Info(expires: 8, eventEnds: 20))).Count);

    [Theory]
    [InlineData("fr-CA", "en-CA", 1)]
    [InlineData("en-CA", "fr-CA", 0)]
    [InlineData("fr-CA", "", 1)]
    [InlineData("fr-CA", "es-US", 0)]
    public void Alert_InTwoLanguages_IsToldInEnglishWhereThereIsSome(string first, string second, int told)
    {
        AlertInfo[] infos = [Alerts.Info(eventEnds: 20) with { Language = first }, Alerts.Info(eventEnds: 20) with { Language = second }];
        Assert.Same(infos[told], Assert.Single(Standing(1, Alerts.Message("a", 0) with { Infos = infos })).Info);
    }

    [Fact]
    public void Update_ForOtherPlacesOnly_LeavesItStandingHere()
    {
        var update = Alerts.Message("b", 4, Alerts.Info(area: Alerts.There, eventEnds: 30), AlertMessageType.Update, First);
        var cancelThere = Alerts.Message("c", 4, Alerts.Info(area: Alerts.There), AlertMessageType.Cancel, First);
        Assert.Equal("a", Assert.Single(Standing(5, First, update, cancelThere)).Message.Identifier);
    }

    /// <summary>A warning cut in two: cancelled for one part and continued for the other.</summary>
    [Fact]
    public void Update_HereWithCancelThere_ContinuesHere()
    {
        var continued = Alerts.Message("b", 4, Alerts.Info(eventEnds: 30), AlertMessageType.Update, First);
        var cancelled = Alerts.Message("c", 4, Alerts.Info(area: Alerts.There), AlertMessageType.Cancel, First);
        Assert.Equal("b", Assert.Single(Standing(5, First, continued, cancelled)).Message.Identifier);
        Assert.Empty(Ended(5, First, continued, cancelled));
    }

    [Fact]
    public void Update_WithUndecidableArea_DoesNotEndWhatIsSurelyHere()
    {
        var vague = Alerts.Message("c", 4, Alerts.Info(area: Alerts.Somewhere), AlertMessageType.Cancel, First);
        Assert.Single(Standing(5, First, vague));

        var vagueFirst = Alerts.Message("x", 0, Alerts.Info(area: Alerts.Somewhere, eventEnds: 20));
        var vagueCancel = Alerts.Message("y", 4, Alerts.Info(area: Alerts.Somewhere), AlertMessageType.Cancel, vagueFirst);
        Assert.Equal(AlertWhere.MayConcern, Assert.Single(Standing(3, vagueFirst, vagueCancel)).Where);
        Assert.Empty(Standing(5, vagueFirst, vagueCancel));
    }

    [Fact]
    public void Update_ToAllClear_EndsItAsCancelled()
    {
        var clear = Alerts.Message("b", 4, Alerts.Info(eventEnds: 30, responses: [AlertResponse.AllClear]), AlertMessageType.Update, First);
        Assert.Empty(Standing(5, First, clear));
        Assert.Equal(AlertState.Cancelled, Assert.Single(Ended(5, First, clear)).State);
    }

    [Fact]
    public void Updates_ThatNameEachOther_DoNotBothVanish()
    {
        var one = Alerts.Message("b", 4, Alerts.Info(eventEnds: 30), AlertMessageType.Update);
        var two = Alerts.Message("c", 5, Alerts.Info(eventEnds: 30), AlertMessageType.Update, one);
        one = one with { References = [new AlertReference(two.Sender, two.Identifier, two.Sent)] };
        Assert.Equal("c", Assert.Single(Standing(6, one, two)).Message.Identifier);
    }

    [Theory]
    [InlineData(AlertStatus.Test)]
    [InlineData(AlertStatus.Exercise)]
    [InlineData(AlertStatus.System)]
    [InlineData(AlertStatus.Draft)]
    public void Alert_NotActual_NeverStands(AlertStatus status)
    {
        Assert.Empty(Standing(1, First with { Status = status }));
        var cancel = Alerts.Message("c", 5, null, AlertMessageType.Cancel, First) with { Status = status };
        Assert.Single(Standing(6, First, cancel));
    }

    [Fact]
    public void Alert_Elsewhere_IsNotTold()
    {
        var there = Alerts.Message("a", 0, Alerts.Info(area: Alerts.There, eventEnds: 5));
        Assert.Empty(Standing(1, there));
        Assert.Empty(Ended(6, there));
    }

    [Fact]
    public void Alert_WithoutInfo_MayConcernEverybody()
    {
        var bare = Assert.Single(Standing(1, Alerts.Message("a", 0)));
        Assert.Equal((AlertWhere.MayConcern, AlertBearing.Other, null), (bare.Where, bare.Bearing, bare.Info));
    }

    [Fact]
    public void Alert_OfAnotherSubject_IsToldWithItsBearing() =>
        Assert.Equal(AlertBearing.Other, Assert.Single(Standing(1, Alerts.Message("a", 0, Alerts.Info("Air Quality Alert", expires: 9)))).Bearing);

    [Fact]
    public void Alert_InTwoLanguages_EndsWithTheLaterAndTakesTheStrongerWord()
    {
        var alert = Alerts.Message("a", 0, Alerts.Info("Aviso", eventEnds: 10)) with
        {
            Infos = [Alerts.Info("Aviso", eventEnds: 10), Alerts.Info("Hurricane Warning", eventEnds: 12)],
        };
        var stands = Assert.Single(Standing(11, alert));
        Assert.Equal((AlertBearing.HurricaneWarning, Alerts.At(12)), (stands.Bearing, stands.Until));
    }

    private static IReadOnlyList<SiteAlert> Standing(double hours, params Advisory[] said) =>
        Alerts.Ledger(said).Alerts(Alerts.At(hours), Alerts.Home);

    private static IReadOnlyList<SiteAlert> Ended(double hours, params Advisory[] said) =>
        Alerts.Ledger(said).EndedAlerts(Alerts.At(hours), Alerts.Home);
}
