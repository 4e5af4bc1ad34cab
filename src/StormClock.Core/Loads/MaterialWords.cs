using StormClock.Core.Garden;

namespace StormClock.Core.Loads;

/// <summary>What the materials of a job weigh and hold, read from their names. All C unless marked: books name things freely.</summary>
internal static class MaterialWords
{
    /// <summary>Of a block, bag or anything used as a weight of which no more is known, kg.</summary>
    public const double UsualWeightKg = 15;

    private static readonly double RatchetN = WorkingLoad.WebbingN(227 * Footing.Gravity); // 25 mm, 500 lb (trade.md 2.3, M)
    private static readonly double RopeN = WorkingLoad.RopeN(7_500, knotted: true); // 8 mm polypropylene, between 5 kN at 6 mm and 10 at 10 (M)
    private static readonly double AnchorN =
        GroundAnchor.ConeUpliftN(0.075, 0.6, GroundAnchor.MoistSoilKgM3) / GroundAnchor.SafetyFactor; // garden auger (trade.md 2.7, D)

    /// <summary>Each; first word that fits. What only holds comes before what weighs: a chock block is no weight.</summary>
    private static readonly (string Word, double WeightKg, double LineN, double GroundN)[] Each =
    [
        ("chock", 0, 0, 100),
        ("elastic", 0, 0, 0), ("bungee", 0, 0, 0), // no rated load (trade.md 2.3)
        ("sand", 16, 0, 0), ("block", UsualWeightKg, 0, 0), ("paver", UsualWeightKg, 0, 0), ("slab", UsualWeightKg, 0, 0), // M
        ("weight", UsualWeightKg, 0, 0), ("water", UsualWeightKg, 0, 0), ("compost", UsualWeightKg, 0, 0), ("brick", 3, 0, 0),
        ("anchor", 0, 0, AnchorN), ("post", 0, 0, 300), ("stake", 0, 0, 150), ("peg", 0, 0, 50), ("staple", 0, 0, 50),
        ("cable tie", 0, 100, 0), // 22 kg new (M), half of it
        ("ratchet", 0, RatchetN, 0), ("strap", 0, RatchetN / 2, 0), ("webbing", 0, RatchetN / 2, 0),
        ("rope", 0, RopeN, 0), ("wire", 0, RopeN, 0), ("chain", 0, RopeN, 0), ("twine", 0, 30, 0),
    ];

    // Of rope, webbing or twine that make one line.
    private const double LineM = 4;

    // Dry sand; water is less (M).
    private const double SandKgPerL = 1.6;

    /// <summary>kg on one piece.</summary>
    public static double WeightKg(IReadOnlyList<MaterialNeed> materials, int count) => materials.Sum(WeightKg) / Math.Max(1, count);

    /// <summary>Working load on one piece, N: lines and what they are tied to in the ground are a chain, and the weaker counts.</summary>
    public static double HoldN(IReadOnlyList<MaterialNeed> materials, int count)
    {
        var lines = materials.Sum(need => Pieces(need) * Of(need).LineN);
        var ground = materials.Sum(need => Pieces(need) * Of(need).GroundN);
        return (lines > 0 && ground > 0 ? Math.Min(lines, ground) : Math.Max(lines, ground)) / Math.Max(1, count);
    }

    /// <summary>Working load on one piece that goes into the ground, N: what ties growth to a panel does not hold its posts.</summary>
    public static double GuysN(IReadOnlyList<MaterialNeed> materials, int count) =>
        materials.Any(need => Pieces(need) * Of(need).GroundN > 0) ? HoldN(materials, count) : 0;

    private static double WeightKg(MaterialNeed need) => Of(need) is not { WeightKg: > 0 } known ? 0 : need.Unit switch
    {
        "kg" => Quantity(need),
        "l" => Quantity(need) * (known.Word == "sand" ? SandKgPerL : 1),
        _ => Pieces(need) * known.WeightKg,
    };

    private static double Pieces(MaterialNeed need) => need.Unit switch
    {
        "m" => Quantity(need) / LineM,
        "pair" => Quantity(need) * 2,
        _ => Quantity(need),
    };

    private static double Quantity(MaterialNeed need) => ItemLoads.Known(need.Quantity) ?? 0;

    private static (string Word, double WeightKg, double LineN, double GroundN) Of(MaterialNeed need)
    {
        var name = need.Material.Replace('_', ' ');
        return Each.FirstOrDefault(known => name.Contains(known.Word, StringComparison.OrdinalIgnoreCase));
    }
}
