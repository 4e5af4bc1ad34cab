using StormClock.Core.Advisories;
using StormClock.Core.Tests.Hazards;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Advisories;

public sealed class CentreFixTests
{
    private static readonly Instant Begin = Instant.FromUtc(2030, 9, 1, 0, 0);

    /// <summary>One storm of three full advisories, six hours apart, each with its centre three hours after its own nominal time.</summary>
    private static readonly CycloneAdvisory[] Storm = [.. Enumerable.Range(1, 3).Select(number => Full("AL992030", number, 20 + number))];

    /// <summary>Worked by hand: the newest centre told by then, from either sort.</summary>
    [Theory]
    [InlineData(3, 21, 3)]
    [InlineData(9, 22, 9)]
    [InlineData(12, 22.5, 12)]
    [InlineData(14.9, 22.5, 12)]
    [InlineData(15, 23, 15)]
    [InlineData(99, 23, 15)]
    public void Newest_AsTimeGoesOn_IsTheLastCentreTold(double nowHours, double latitude, double atHours)
    {
        var fix = CentreFix.Newest(Ledger([.. Storm, Position("AL992030", "2A", 12, 22.5), Full("AL012030", 5, 40)]), Storm[0].Id, Begin + Duration.FromHours(nowHours));
        Assert.Equal(new CentreFix("TEST", new(latitude, -80), Begin + Duration.FromHours(atHours)), fix);
    }

    [Fact]
    public void Newest_Corrected_IsTheCorrection()
    {
        var corrected = Storm[2] with { Corrected = true, Now = Storm[2].Now with { Centre = new(23.5, -80) } };
        Assert.Equal(23.5, CentreFix.Newest(Ledger(Storm[2], corrected), Storm[2].Id, Begin + Duration.FromDays(1))!.Centre.LatDeg);
    }

    [Fact]
    public void Newest_DissipatedWithoutACentre_IsTheOneBefore()
    {
        var last = Storm[2] with { Final = true, Now = Storm[2].Now with { Centre = null, Nature = CycloneNature.Dissipated } };
        Assert.Equal(22, CentreFix.Newest(Ledger(Storm[1], last), last.Id, Begin + Duration.FromDays(1))!.Centre.LatDeg);
        Assert.Null(CentreFix.Newest(Ledger(last), last.Id, Begin + Duration.FromDays(1)));
    }

    [Theory]
    [InlineData("")]
    [InlineData("no such id")]
    public void Newest_OfNothingThatIsAnAdvisory_IsNotKnown(string id)
    {
        Assert.Null(CentreFix.Newest(Ledger(Storm), id, Begin + Duration.FromDays(1)));
        var position = Position("AL992030", "2A", 12, 22.5);
        Assert.Null(CentreFix.Newest(Ledger(position), position.Id, Begin + Duration.FromDays(1)));
        Assert.Null(CentreFix.Newest(Ledger(Storm), Storm[0].Id, Begin));
    }

    private static CycloneAdvisory Full(string id, int number, double latitude) =>
        SampleStorms.Storm(id, "TEST", $"{number}", Begin + Duration.FromHours(6 * (number - 1)), SampleStorms.Point(3, latitude, -80, 60), SampleStorms.Point(24, latitude + 2, -80, 60));

    private static CyclonePosition Position(string id, string number, double hours, double latitude) =>
        new(id, "TEST", number, Begin + Duration.FromHours(hours), new(latitude, -80), 60, null, null);

    private static AdvisoryLedger Ledger(params Advisory[] advisories) => advisories.Aggregate(AdvisoryLedger.Empty, (ledger, advisory) => ledger.With(advisory, advisory.Issued));
}
