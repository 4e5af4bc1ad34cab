namespace StormClock.Core.Loads;

/// <summary>
/// Wind on a tree, its stem and its root plate, after the GALES and HWIND line of models (science.md 5.3; M unless marked). An order of
/// worry among trees: decay, cavities, cut roots and old wounds are not seen, and no figure here says that a tree stands.
/// </summary>
public static class Trees
{
    /// <summary>Broadleaf in leaf, on still-air outline; conifer 0.6, palm 0.3, leafless 0.25.</summary>
    public const double LeafyDrag = 0.5;

    /// <summary>Below this drag a crown has no leaves to fold (C).</summary>
    public const double LeaflessBelowDrag = 0.3;

    /// <summary>Own weight of the bent crown (C).</summary>
    public const double BentCrown = 1.1;

    /// <summary>Modulus of rupture of green wood, Pa; 30 to 60 MPa.</summary>
    public const double GreenWoodPa = 40e6;

    /// <summary>Knots and defects, 0.8 to 1.</summary>
    public const double Knots = 0.9;

    /// <summary>Turning moment of the root plate per kg of stem, N·m/kg; 100 to 180, measured 77 to 146 (R2).</summary>
    public const double RootHoldNmPerKg = 120;

    private const double GreenDensityKgM3 = 850;
    private const double StemTaper = 0.5;
    private const double FoldsFromMps = 10;
    private const double FoldPower = 0.7;
    private const double FoldFloor = 0.2;

    /// <summary>Outline of a crown, m²: 0.8 width × depth.</summary>
    public static double CrownAreaM2(double widthM, double depthM) => 0.8 * widthM * depthM;

    /// <summary>Share of its drag that a leafy crown keeps as leaves fold: min(1, (10 / V)^0.7), not below 0.2.</summary>
    public static double Streamlining(double gustMps) =>
        gustMps <= FoldsFromMps ? 1 : Math.Max(FoldFloor, Math.Pow(FoldsFromMps / gustMps, FoldPower));

    /// <summary>Stem mass, kg: ρ π/4 d² H · 0.5.</summary>
    public static double StemMassKg(double stemM, double heightM) => GreenDensityKgM3 * Math.PI / 4 * stemM * stemM * heightM * StemTaper;

    /// <summary>Moment at which the root plate turns in dry soil, N·m.</summary>
    public static double RootHoldNm(double stemM, double heightM) => RootHoldNmPerKg * StemMassKg(stemM, heightM);

    /// <summary>Share of the dry hold that is left: saturated soil 0.7 (0.5 to 0.85), under three years in the ground 0.4, staked 1.3.</summary>
    public static double RootShare(Soil soil, bool young, bool staked) =>
        (soil == Soil.Saturated ? 0.7 : 1) * (young ? 0.4 : 1) * (staked ? 1.3 : 1);

    /// <summary>The gust, m/s, whose moment on a crown is this: M = 0.613 Cd A V² ψ(V) · lever.</summary>
    /// <param name="folds">Leaves fold (ψ as above). Without, the square law: lower gusts, the careful end of the range.</param>
    public static double GustOfMomentMps(double momentNm, double dragAreaM2, double leverM, bool folds)
    {
        var perPressure = dragAreaM2 * leverM;
        var square = VelocityPressure.GustMps(momentNm / perPressure);
        if (!folds || square <= FoldsFromMps) return square;
        var folding = Math.Pow(square * square / Math.Pow(FoldsFromMps, FoldPower), 1 / (2 - FoldPower));
        return Math.Min(folding, square / Math.Sqrt(FoldFloor));
    }
}
