namespace StormClock.Core.Loads;

/// <summary>Wind on nets, meshes, lattice and boards, as coefficients on the gross outline (science.md 5.2, trade.md 2.5).</summary>
public static class PorousPanel
{
    /// <summary>Flat solid panel on the ground, 1.2 to 1.55 (ASCE 7 figure 29.3-1, M).</summary>
    public const double SolidDrag = 1.3;

    // Round thin bars, on their solid area, where less than a tenth of the outline is solid (ASCE 7-16 table 29.4-2, R2).
    private const double OpenWireBelow = 0.1;
    private const double WireDrag = 1.2;

    /// <summary>Solid share of a square mesh of wires.</summary>
    public static double MeshSolidity(double wireM, double spacingM) => 1 - Math.Pow(1 - wireM / spacingM, 2);

    /// <summary>Solid share, 0 to 1, when climbers cover a share of the outline and close the holes there (C).</summary>
    public static double Overgrown(double solidity, double climberCover) => solidity + climberCover * (1 - solidity);

    /// <summary>Open wire 1.2 φ; else Cd [1 − (1 − φ)^1.5] (open-sign factor of ASCE 7, M).</summary>
    /// <param name="solidity">φ, 0 to 1.</param>
    /// <param name="solidDrag">Cd of the same panel without holes.</param>
    public static double Drag(double solidity, double solidDrag = SolidDrag) =>
        solidity < OpenWireBelow ? WireDrag * solidity : solidDrag * (1 - Math.Pow(1 - solidity, 1.5));
}
