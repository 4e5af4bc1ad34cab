using StormClock.Core.Loads;

namespace StormClock.Core.Tests.Loads;

public class PorousPanelTests
{
    private const double MeshM2 = 1.22 * 2.44;

    // trade.md 11, 13 and 14; 2.5 (D): 2.5 mm wire at 50 mm, filled panel 1.4.
    [Fact]
    public void Mesh_BareAndFilledWithLeaves_DiffersTwelvefold()
    {
        var solidity = PorousPanel.MeshSolidity(0.0025, 0.05);
        Assert.Equal(0.0975, solidity, 0.0002);
        var bare = 186 * MeshM2 * PorousPanel.Drag(solidity);
        var filled = 186 * MeshM2 * PorousPanel.Drag(PorousPanel.Overgrown(solidity, 1), 1.4);
        Assert.Equal(65, bare, 1.3);
        Assert.Equal(777, filled, 15.5);
        Assert.Equal(12.0, filled / bare, 0.24);
    }

    // science.md 5.2 (M): 0.5 gives 0.84; solid and none by definition. trade.md 2.5 has 0.8 for a half filled mesh (D).
    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(0.5, 0.84, 0.005)]
    [InlineData(0.5, 0.8, 0.05)]
    [InlineData(1, 1.3, 1e-9)]
    public void Drag_BySolidity_IsOnTheGrossOutline(double solidity, double expected, double tolerance) =>
        Assert.Equal(expected, PorousPanel.Drag(solidity), tolerance);

    [Fact]
    public void Overgrown_HalfCovered_ClosesHalfOfTheHoles() => Assert.Equal(0.55, PorousPanel.Overgrown(0.1, 0.5), 1e-9);
}
