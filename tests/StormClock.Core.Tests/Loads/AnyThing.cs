using CsCheck;
using StormClock.Core.Garden;

namespace StormClock.Core.Tests.Loads;

/// <summary>Things that a book might hold, and some that none should.</summary>
internal static class AnyThing
{
    public static Gen<ItemShape> Shape { get; } = Gen.Enum<ItemShape>();

    public static Gen<JobKind> Job { get; } = Gen.Enum<JobKind>();

    /// <summary>Every figure missing half of the time, else within reason.</summary>
    public static Gen<ItemBuild> Build { get; } = Of(Maybe);

    /// <summary>Zero, negative, endless and undefined figures among them.</summary>
    public static Gen<ItemBuild> Nonsense { get; } = Of((_, high) => Gen.OneOf(
        Gen.Const((double?)null), Gen.Const((double?)0), Gen.Const((double?)-1), Gen.Const((double?)double.NaN),
        Gen.Const((double?)double.PositiveInfinity), Gen.Const((double?)1e300), Gen.Const((double?)1e-300),
        Gen.Double[0, high].Select(x => (double?)x)));

    public static Gen<MaterialNeed[]> Materials { get; } = Gen.Select(
        AnyOf("concrete block", "sand bag", "ratchet strap", "ground anchor", "rope 8 mm", "chock block", "crate", "garden_twine", "stake 6 ft"),
        Gen.Double[0, 30],
        AnyOf("each", "m", "kg", "l", "pair")).Select((name, quantity, unit) => new MaterialNeed(name, quantity, unit)).Array[0, 4];

    private static Gen<string> AnyOf(params string[] words) => Gen.Int[0, words.Length - 1].Select(i => words[i]);

    private static Gen<double?> Maybe(double low, double high) =>
        Gen.Select(Gen.Bool, Gen.Double[low, high]).Select((there, x) => there ? x : (double?)null);

    private static Gen<ItemBuild> Of(Func<double, double, Gen<double?>> figure) =>
        from size in Gen.Select(figure(0.1, 12), figure(0.1, 6), figure(0.1, 6), figure(0.1, 2))
        from mass in Gen.Select(figure(0.2, 600), figure(0.2, 900), figure(0, 2), figure(0.1, 0.8))
        from share in Gen.Select(figure(0.01, 1), figure(0, 1), figure(0, 1), figure(0.3, 1.5))
        from plant in Gen.Select(figure(0.1, 1), figure(0.01, 0.6), figure(0.2, 8), figure(0, 20))
        from hold in Gen.Select(figure(0.03, 0.15), figure(0.2, 0.9), figure(0, 3000), figure(5, 60))
        from words in Gen.Select(Gen.Enum<Standing>(), Gen.Enum<Surface>(), Gen.Int[0, 4], figure(10, 1000))
        select new ItemBuild
        {
            HeightM = size.Item1, WidthM = size.Item2, DepthM = size.Item3, BaseM = size.Item4,
            MassKg = mass.Item1, MassWetKg = mass.Item2, RaisedM = mass.Item3, Friction = mass.Item4,
            Solidity = share.Item1, ClimberCover = share.Item2, Filled = share.Item3, Drag = share.Item4,
            PotHeightM = plant.Item1, StemM = plant.Item2, CrownDepthM = plant.Item3, YearsInGround = plant.Item4,
            PostM = hold.Item1, PostDeepM = hold.Item2, TieN = hold.Item3, HeldToMps = hold.Item4,
            Standing = words.Item1, Surface = words.Item2, Posts = words.Item3, HoldsL = words.Item4,
        };
}
