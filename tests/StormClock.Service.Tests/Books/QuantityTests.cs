using StormClock.Service.Books;

namespace StormClock.Service.Tests.Books;

public class QuantityTests
{
    private static readonly Dictionary<string, QuantityKind> Kinds = new()
    {
        ["length"] = QuantityKind.Length, ["metric length"] = QuantityKind.MetricLength, ["mass"] = QuantityKind.Mass, ["wind"] = QuantityKind.WindSpeed,
        ["volume"] = QuantityKind.Volume, ["force"] = QuantityKind.Force, ["share"] = QuantityKind.Share,
    };

    /// <summary>Exact definitions: each row with its source.</summary>
    [Theory]
    // International yard and pound of 1959: 1 in = 25.4 mm, 1 ft = 12 in, 1 lb = 0.45359237 kg.
    [InlineData("length", "6 ft", 1.8288)]
    [InlineData("length", "6 ft 2 in", 1.8796)]
    [InlineData("length", "6ft 2in", 1.8796)]
    [InlineData("length", "5 ft 6.5 in", 1.6891)]
    [InlineData("length", "-1 ft 6 in", -0.4572)]
    [InlineData("length", "14 in", 0.3556)]
    [InlineData("length", "0.1 in", 0.00254)]
    [InlineData("mass", "40 lb", 18.1436948)]
    // SI prefixes.
    [InlineData("length", "1.8 m", 1.8)]
    [InlineData("length", "-0.4 m", -0.4)]
    [InlineData("length", "35 cm", 0.35)]
    [InlineData("length", "1200 mm", 1.2)]
    [InlineData("metric length", "1.8", 1.8)]
    [InlineData("metric length", "6 ft 2 in", 1.8796)]
    [InlineData("mass", "500 g", 0.5)]
    [InlineData("force", "2 kN", 2000)]
    [InlineData("force", "500 N", 500)]
    // US gallon: 231 cubic inches.
    [InlineData("volume", "1 gal", 3.785411784)]
    [InlineData("volume", "55 gal", 208.19764812)]
    [InlineData("volume", "60 l", 60)]
    [InlineData("volume", "60 L", 60)]
    // Standard gravity 9.80665 m/s2 (third CGPM, 1901): 1 kgf = 9.80665 N, 1 lbf = 0.45359237 kgf.
    [InlineData("force", "1 kgf", 9.80665)]
    [InlineData("force", "1 lbf", 4.448221615261)]
    // International mile of 1609.344 m; international knot of 1852 m an hour.
    [InlineData("wind", "45 mph gust", 20.1168)]
    [InlineData("wind", "90 km/h", 25)]
    [InlineData("wind", "36 kt", 18.52)]
    [InlineData("share", "40 %", 0.4)]
    [InlineData("share", "35%", 0.35)]
    [InlineData("share", "0.07", 0.07)]
    public void Parse_AsWritten_GivesSi(string kind, string text, double si)
    {
        var read = Quantity.Parse(text, Kinds[kind], "gust", out var reason);

        Assert.True(read is not null, reason);
        Assert.Equal(si, read.Value, 11);
    }

    [Theory]
    [InlineData("length", "6", "a length with its unit")]
    [InlineData("length", "6 ft 14 in", "a length with its unit")]
    [InlineData("length", "6 ft 2", "a length with its unit")]
    [InlineData("length", "6 m 2 in", "a length with its unit")]
    [InlineData("length", "2 yd", "unknown unit 'yd'")]
    [InlineData("length", "6 ft tall", "'tall' does not belong")]
    [InlineData("length", "1,8 m", "a comma in the number '1,8 m'; write a point")]
    [InlineData("mass", "1,200 kg", "a comma in the number")]
    [InlineData("volume", "200", "a volume with its unit")]
    [InlineData("volume", "2 gallons", "unknown unit 'gallons'")]
    [InlineData("force", "500 kg", "unknown unit 'kg'")]
    [InlineData("force", "500", "a force with its unit")]
    [InlineData("share", "40 percent", "unknown unit 'percent'")]
    [InlineData("share", "half", "a share")]
    [InlineData("metric length", "NaN", "a length")]
    [InlineData("metric length", "1e400 m", "a length")]
    public void Parse_NotSuchAQuantity_SaysTheMend(string kind, string text, string words)
    {
        Assert.Null(Quantity.Parse(text, Kinds[kind], "", out var reason));
        Assert.Contains(words, reason);
    }
}
