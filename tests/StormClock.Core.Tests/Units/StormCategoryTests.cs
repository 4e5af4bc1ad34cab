using StormClock.Core.Units;

namespace StormClock.Core.Tests.Units;

public class StormCategoryTests
{
    // trade.md 11, 5 and 1.4 (R).
    [Theory]
    [InlineData(73, 0)]
    [InlineData(74, 1)]
    [InlineData(96, 2)]
    [InlineData(110, 2)]
    [InlineData(111, 3)]
    [InlineData(130, 4)]
    [InlineData(157, 5)]
    public void SaffirSimpson_Edges_BelongToTheHigherCategory(double mph, int expected) => Assert.Equal(expected, StormCategory.SaffirSimpson(mph));

    // trade.md 11, 6 and 1.4 (R).
    [Theory]
    [InlineData(100, 1)]
    [InlineData(125, 2)]
    [InlineData(164, 2)]
    [InlineData(165, 3)]
    [InlineData(225, 4)]
    [InlineData(280, 5)]
    public void Australian_Edges_BelongToTheHigherCategory(double gustKmh, int expected) => Assert.Equal(expected, StormCategory.Australian(gustKmh));
}
