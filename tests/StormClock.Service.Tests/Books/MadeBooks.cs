using CsCheck;
using StormClock.Core.Garden;
using StormClock.Service.Books;

namespace StormClock.Service.Tests.Books;

/// <summary>Garden books made at random over all that a gardener may write of places, people, items and jobs.</summary>
internal static class MadeBooks
{
    public static Gen<T> Any<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static readonly Gen<string> Word = Gen.String[Gen.Char["ab \"'\\:#{}[],;&*!|>%@`-?~é≈="], 1, 16].Where(text => text.Trim().Length > 0).Select(text => text.Trim());

    private static Gen<double?> Maybe(double least, double most) => Gen.Frequency((1, Gen.Const((double?)null)), (2, Gen.Double[least, most].Select(number => (double?)number)));

    private static Gen<T?> MaybeOne<T>()
        where T : struct, Enum => Gen.Frequency((1, Gen.Const((T?)null)), (2, Any(Enum.GetValues<T>()).Select(value => (T?)value)));

    private static readonly Gen<ItemBuild> Sizes =
        from outline in Gen.Select(Maybe(2, 40), Maybe(0.01, 40), Maybe(0.01, 40), Maybe(0.01, 10))
        from masses in Gen.Select(Maybe(0, 500), Maybe(500, 900), Maybe(0, 20))
        from held in Gen.Select(MaybeOne<Standing>(), MaybeOne<Surface>(), Maybe(0.05, 3), Maybe(0.05, 2))
        from shares in Gen.Select(Maybe(0, 1), Maybe(0, 1))
        select new ItemBuild
        {
            HeightM = outline.Item1, WidthM = outline.Item2, DepthM = outline.Item3, BaseM = outline.Item4,
            MassKg = masses.Item1, MassWetKg = masses.Item2, RaisedM = masses.Item3,
            Standing = held.Item1, Surface = held.Item2, Drag = held.Item3, Friction = held.Item4,
            Solidity = shares.Item1, ClimberCover = shares.Item2,
        };

    /// <summary>Written so that nothing in it contradicts: what is held is known where it is filled, and posts have a depth.</summary>
    public static readonly Gen<ItemBuild> Build =
        from sizes in Sizes
        from water in Gen.Select(Maybe(0.1, 5000), Maybe(0, 1))
        from plant in Gen.Select(Maybe(0.01, 1.9), Maybe(0.01, 2), Maybe(0.1, 30), Maybe(0, 200))
        from posts in Gen.Select(Gen.Int[0, 5], Maybe(0.01, 1), Gen.Double[0, 5])
        from strength in Gen.Select(Maybe(0, 100_000), Maybe(1, 100))
        select sizes with
        {
            HoldsL = water.Item1, Filled = water.Item1 is null ? null : water.Item2,
            CatchmentM2 = plant.Item1 * 10, PotHeightM = plant.Item1, StemM = plant.Item2, CrownDepthM = plant.Item3, YearsInGround = plant.Item4,
            Posts = posts.Item1 == 0 ? null : posts.Item1, PostM = posts.Item2, PostDeepM = posts.Item1 == 0 ? null : posts.Item3,
            TieN = strength.Item1, HeldToMps = strength.Item2,
        };

    private static readonly Gen<Harvest?> Harvest = Gen.Frequency(
        (1, Gen.Const((Harvest?)null)),
        (2, Gen.Select(Any(Crops.All.Values.ToArray()), Maybe(0, 900), Gen.Double[0, 0.5], Gen.Double[0, 0.5]).Select(
            (crop, value, ripe, mature) => (Harvest?)new Harvest(crop, value ?? 0, ripe, mature) { ValueTypical = value is null })));

    /// <summary>A drum, a trellis or something else; typical figures and jobs come as the reader would fill them in.</summary>
    public static readonly Gen<Item> Item =
        from kind in Any("drum", "trellis", "other")
        from name in Word
        from count in Gen.Int[1, 400]
        from value in Maybe(0, 5000)
        from build in Build
        from harvest in Harvest
        from spot in Gen.Select(Gen.Int[0, 10_000], Gen.Int[0, 10_000], Gen.Bool).Select(spot => spot.Item3 ? new PlotSpot(spot.Item1, spot.Item2) : null)
        from endangers in Any("car", "street", "own_window").Array[0, 2]
        select new Item("thing", name, kind, "porch", count, value ?? 0, endangers, []) { Written = build, ValueTypical = value is null, Harvest = harvest, Spot = spot };

    public static readonly Gen<Job> Job =
        from kind in Any(JobKind.Strap, JobKind.Fill)
        from left in Gen.Int[0, 255]
        from numbers in Gen.Select(Gen.Int[1, 1440], Gen.Int[1, 2])
        from words in Gen.Select(Word.Null(), Word.Null())
        from value in Maybe(0, 900)
        from part in Maybe(0.1, 900)
        from materials in Gen.Select(Word, Gen.Double[0, 90]).Select(need => new MaterialNeed(need.Item1, need.Item2, "each")).Array[0, 2]
        from rest in Gen.Select(Any<JobKind?>(null, JobKind.Untie, JobKind.Check), Gen.Bool, Any(WorkClass.Ground, WorkClass.Sheet, WorkClass.Carry))
        select new Job("", "thing", kind, numbers.Item1, numbers.Item2, rest.Item3, [], value ?? 0, 0, materials, null, 0, 0, words.Item1, rest.Item1, rest.Item2)
        {
            Caution = words.Item2, PartKg = part, ValueStated = value is not null, LeftOut = (JobParts)left,
        };

    private static readonly Gen<LocalDate?> Date = Gen.Int[0, 900].Select(day => day == 0 ? (LocalDate?)null : new LocalDate(2026, 1, 1).PlusDays(day));

    /// <summary>A book with all of it in it, as the writer is given it.</summary>
    public static Gen<GardenBook> Book(GardenBook like) =>
        from surveyed in Date
        from shopping in Maybe(0, 240)
        from place in Gen.Select(Word.Null(), Maybe(-10, 900), Maybe(-10, 900))
        from near in Gen.Select(Maybe(0, 900), Maybe(0, 900), Maybe(0, 900))
        from store in Gen.Select(Maybe(0.1, 5), Maybe(-2, 5))
        from plot in Gen.Select(Gen.Int[0, 9000], Gen.Int[0, 9000], Gen.Int[1, 1000], Gen.Int[1, 1000], Gen.Bool).Select(plot => plot.Item5 ? new PlotRect(plot.Item1, plot.Item2, plot.Item3, plot.Item4) : null)
        from ladder in Any(Enum.GetValues<LadderUse>())
        from item in Item
        from jobs in Gen.Select(Gen.Int[0, 2], Job.Array[1, 3])
        select like with
        {
            Surveyed = surveyed,
            ShoppingHours = shopping ?? GardenBook.UsualShoppingHours,
            Sites = [like.Sites[0] with { Datum = place.Item1, GroundM = place.Item2 }, .. like.Sites.Skip(1)],
            Areas = [like.Areas[0] with { GroundM = place.Item3, WaterM = near.Item1, NeighbourM = near.Item2, GlassM = near.Item3, Plot = plot }, .. like.Areas.Skip(1)],
            Stores = [like.Stores[0] with { DoorM = store.Item1, RaisedM = store.Item2 }],
            People = [like.People[0] with { SecondEmail = ladder == LadderUse.Never ? null : "ines@work.example" }, like.People[1] with { LadderAlone = ladder == LadderUse.Alone, NoLadder = ladder == LadderUse.Never }],
            Items = [item with { JobsTypical = jobs.Item1 == 0, Jobs = jobs.Item1 == 2 ? Needed(item, jobs.Item2) : [] }],
        };

    /// <summary>What the kind has no job for must have its minutes written.</summary>
    private static List<Job> Needed(Item item, Job[] jobs) =>
        [.. jobs.Select(job => item.Kind == "drum" ? job : job with { LeftOut = job.LeftOut & ~JobParts.Minutes })];
}
