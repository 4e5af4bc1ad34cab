using StormClock.Core.Loads;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Loads;

public class FootingTests
{
    [Fact]
    public void Pressure_L1_IsThatOf40Mps() => Assert.Equal(980.8, VelocityPressure.AtPa(40), 0.1); // science.md 9, L1 (ASCE form)

    // trade.md 11, checks 2 and 3 (2.1); 1 lbf/ft² = 47.880 Pa.
    [Fact]
    public void Pressure_Mph39And78_IsAsInTheTable()
    {
        var pressure = VelocityPressure.AtPa(39 * Wind.MpsPerMph);
        Assert.Equal(186, pressure, 1.86);
        Assert.Equal(3.89, pressure / 47.880, 0.04);
        Assert.Equal(4, VelocityPressure.AtPa(78 * Wind.MpsPerMph) / pressure, 1e-9);
    }

    // trade.md 2.1 (D), sustained wind in mph and Pa.
    [Theory]
    [InlineData(20, 49)]
    [InlineData(58, 412)]
    [InlineData(96, 1129)]
    [InlineData(130, 2070)]
    public void Pressure_TableOfWinds_IsThere(double mph, double expectedPa)
    {
        Assert.Equal(expectedPa, VelocityPressure.AtPa(mph * Wind.MpsPerMph), 1.0);
        Assert.Equal(mph * Wind.MpsPerMph, VelocityPressure.GustMps(VelocityPressure.AtPa(mph * Wind.MpsPerMph)), 1e-9);
    }

    public static TheoryData<string, double, double, double, WindFace[], double?, double?, double> Things() => new()
    {
        // source; kg; foot, m; friction; faces: m², centre m, Cd; slides, tips, m/s; tolerance
        { "science.md 9, L2 (D)", 35, 0.30, 0.5, [new(0.144, 0.2, 0.8), new(0.48, 0.8, 0.5)], 28.07, 19.76, 0.02 },
        { "science.md 9, L4 (D)", 25, 0.50, 0.4, [new(2.16, 0.9, 1.3)], 7.55, 6.29, 0.02 },
        { "science.md 9, L4, porous (D)", 25, 0.50, 0.4, [new(2.16, 0.9, 0.8)], null, 8.02, 0.02 },
        { "science.md 9, L5, empty (D)", 30, 1.1, 0.4, [new(1.43, 0.65, 0.7)], 13.8, 20.1, 0.1 },
        { "science.md 9, L5, a quarter full (D)", 267.5, 1.1, 0.4, [new(1.43, 0.65, 0.7)], 41.4, 60.1, 0.1 },
        { "science.md 9, L5, half full (D)", 505, 1.1, 0.4, [new(1.43, 0.65, 0.7)], 56.8, 82.6, 0.1 },
        { "science.md 9, L5, full (D)", 980, 1.1, 0.4, [new(1.43, 0.65, 0.7)], 79.2, 115.1, 0.1 },
        { "trade.md 11, 8 (D)", 10, 0.58, 0.35, [new(0.516, 0.445, 0.8)], 11.6, 15.9, 0.1 },
        { "trade.md 11, 9 (D)", 60, 1.0, 0.4, [new(1.16, 0.58, 1.3)], 16.0, 23.4, 0.1 },
        { "trade.md 11, 10 (D)", 660, 1.0, 0.4, [new(1.16, 0.58, 1.3)], 52.9, 77.7, 0.2 },
        { "trade.md 11, 11 (D)", 24.1, 0.36, 0.5, [new(0.9, 1.3, 0.5), new(0.16, 0.19, 0.8)], null, 10.7, 0.1 },
        { "trade.md 11, 12 (D)", 62.9, 0.36, 0.5, [new(0.9, 1.3, 0.5), new(0.16, 0.19, 0.8)], null, 17.2, 0.1 },
        { "trade.md 2.4, open umbrella (D)", 34, 0.5, 0.4, [new(1.1, 2.0, 1.2), new(0.1, 1.0, 1.2)], 12.3, 7.0, 0.06 },
        { "trade.md 2.4, boat on a rack (D)", 23, 0.6, 0.35, [new(1.35, 0.75, 0.7)], 11.7, 12.5, 0.06 },
        { "trade.md 2.4, hammock stand (D)", 26, 1.1, 0.35, [new(0.9, 0.7, 1.0)], 12.7, 19.1, 0.06 },
        { "trade.md 2.4, hardwood bench (D)", 33, 0.5, 0.45, [new(0.75, 0.58, 1.3)], 15.6, 15.3, 0.06 },
        { "trade.md 2.4, glazed pot (D)", 41, 0.34, 0.5, [new(0.5, 0.95, 0.5), new(0.15, 0.2, 0.8)], 29.8, 20.6, 0.06 },
        { "trade.md 2.4, trough on trestles (D)", 29, 0.6, 0.4, [new(0.42, 0.82, 1.2), new(0.12, 0.4, 1.2)], 16.9, 17.2, 0.06 },
        { "trade.md 2.4, hive (D)", 46, 0.48, 0.5, [new(0.4, 0.6, 1.3)], 26.6, 23.8, 0.06 },
        { "trade.md 2.4, rain barrel (D)", 48, 0.5, 0.4, [new(0.55, 0.48, 0.8)], 26.4, 30.1, 0.06 },
    };

    [Theory]
    [MemberData(nameof(Things))]
    public void Thresholds_WorkedExamples_SlideAndTip(
        string source, double massKg, double footM, double friction, WindFace[] faces, double? slides, double? tips, double tolerance)
    {
        var slid = Footing.SlidesAtMps(massKg, friction, faces.Sum(face => face.DragAreaM2));
        var tipped = Footing.TipsAtMps(massKg, footM / 2, faces.Sum(face => face.DragMomentM3));
        Assert.True(slides is null || Math.Abs(slid - slides.Value) <= tolerance, $"{source}: slides at {slid}");
        Assert.True(tips is null || Math.Abs(tipped - tips.Value) <= tolerance, $"{source}: tips at {tipped}");
    }

    // L4 and trade.md 11, 7 with 2.4 (D): kg, Cl A, m/s.
    [Theory]
    [InlineData(25, 2.16, 13.61, 0.02)]
    [InlineData(4.3, 1, 8.3, 0.1)]
    [InlineData(7, 1, 10.6, 0.1)]
    [InlineData(1.3, 1, 4.6, 0.1)]
    [InlineData(0.2, 1, 1.8, 0.1)]
    public void Lifts_FlatSheets_AtTheGustOfTheTable(double massKg, double liftArea, double expected, double tolerance) =>
        Assert.Equal(expected, Footing.LiftsAtMps(massKg, liftArea), tolerance);

    [Fact]
    public void Force_L4At40Mps_IsTheWholePanels() => Assert.Equal(2754, VelocityPressure.AtPa(40) * new WindFace(2.16, 0.9, 1.3).DragAreaM2, 1.0);

    [Fact]
    public void Ties_At45Degrees_JoinBothSides()
    {
        // By hand: T 1000 N → 707.1 along and down. Slide (0.5·(98.07 + 707.1) + 707.1) / 0.613 = 1810.3; tip (98.07·0.2 + 707.1·0.4) / (0.613·0.5) = 986.8.
        var tie = new Tie(1000, 0.4);
        Assert.Equal(Math.Sqrt(1810.3), Footing.SlidesAtMps(10, 0.5, 1, tie), 0.01);
        Assert.Equal(Math.Sqrt(986.8), Footing.TipsAtMps(10, 0.2, 0.5, tie), 0.01);
    }
}
