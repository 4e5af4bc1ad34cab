using StormClock.Core.Advisories;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Formats;

public class PublicAdvisoryReaderTests
{
    private const double KtPerMph = 1609.344 / 1852;

    [Fact]
    public void Reading_IntermediateAdvisory_GivesPositionWindAndMovement()
    {
        var read = InventedMessages.One<CyclonePosition>(InventedMessages.Public);
        Assert.Equal(("AL982027", "QUILL", "12A", true), (read.StormId, read.StormName, read.Number, read.Intermediate));
        Assert.Equal(Instant.FromUtc(2027, 9, 21, 18, 0), read.IssuedAt);
        Assert.Equal(new GeoPoint(17.7, -81.7), read.Centre);
        Assert.Equal(60, read.MaxWindKt);
        Assert.Equal(320, read.MovingDeg);
        Assert.Equal(13 * KtPerMph, read.MovingKt!.Value, 6);
    }

    [Fact]
    public void Reading_AnyCase_IsTheSame() =>
        Assert.Equal(
            InventedMessages.One<CyclonePosition>(InventedMessages.Public),
            InventedMessages.One<CyclonePosition>(InventedMessages.Public.ToUpperInvariant()));

    /// <summary>Before 2000 there is no id and no summary; the sentence that repeats the position runs over line ends.</summary>
    [Fact]
    public void Reading_OldLayout_GoesByNameAndYear()
    {
        var read = InventedMessages.One<CyclonePosition>(InventedMessages.OldPublic);
        Assert.Equal(("XX-QUILL-1999", "31", false), (read.StormId, read.Number, read.Intermediate));
        Assert.Equal(Instant.FromUtc(1999, 9, 22, 3, 0), read.IssuedAt);
        Assert.Equal(new GeoPoint(30.1, -78.4), read.Centre);
        Assert.Equal((100, 337.5), (read.MaxWindKt, read.MovingDeg));
    }

    [Theory]
    [InlineData("NW OR 320 DEGREES AT 13 MPH", "STATIONARY", 0.0)]
    [InlineData("NW OR 320 DEGREES AT 13 MPH", "NEARLY STATIONARY", 0.0)]
    [InlineData("NW OR 320 DEGREES AT 13 MPH", "DRIFTING", null)]
    public void Reading_Movement_StationaryIsZeroAndUnknownIsNull(string written, string other, double? kt)
    {
        var read = InventedMessages.One<CyclonePosition>(InventedMessages.Public.Replace(written, other, StringComparison.Ordinal));
        Assert.Equal((null, kt), (read.MovingDeg, read.MovingKt));
    }

    [Theory]
    [InlineData("LOCATION...17.7N 81.7W", "LOCATION...near land", "no line LOCATION")]
    [InlineData("LOCATION...17.7N 81.7W", "LOCATION...97.7N 81.7W", "not on the globe")]
    [InlineData("WINDS...70 MPH", "WINDS...700 MPH", "beyond any storm")]
    [InlineData("200 PM EDT Tue", "200 PM XYZ", "no date line")]
    public void Reading_WhatIsWrong_IsRefusedWithItsReason(string right, string wrong, string reason) =>
        Assert.Contains(reason, InventedMessages.ReadAll(InventedMessages.Public.Replace(right, wrong, StringComparison.Ordinal)).Faults[0].Reason);
}
