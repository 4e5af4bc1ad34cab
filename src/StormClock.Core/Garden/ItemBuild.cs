namespace StormClock.Core.Garden;

/// <summary>What sort of thing the wind meets; decides which ways of failing are looked at.</summary>
public enum ItemShape
{
    /// <summary>Bound to the ground or to a building; no formula.</summary>
    Fixed,

    /// <summary>Stands on its foot: pots, tanks, furniture, boxes. Slides, tips, lifts.</summary>
    Body,

    /// <summary>Stands upright and flat: trellis, mesh, board. Tips or slides, or leans on its posts.</summary>
    Panel,

    /// <summary>Lies flat and may be lifted: sheets, panes, boards.</summary>
    Sheet,

    /// <summary>Hangs and swings.</summary>
    Hung,

    /// <summary>Stem and crown. Breaks or uproots.</summary>
    Tree,

    /// <summary>Soft stems, for which there are observations only.</summary>
    Stems,

    /// <summary>Cloth, film or net on a frame.</summary>
    Cover,
}

/// <summary>How a thing is held.</summary>
public enum Standing { Free, Raised, Staked, OnPosts, Tied, Strapped, Hung, Lying, Rooted, RootedThrough, Fastened }

/// <summary>What a thing stands on.</summary>
public enum Surface { Paving, Tiles, Decking, Gravel, Soil, Grass, Rubber }

/// <summary>How one piece of an item is made and how it stands, in SI; null where nothing is known.</summary>
public sealed record ItemBuild
{
    public static ItemBuild Unknown { get; } = new();

    /// <summary>Of the whole outline above its foot, crown included.</summary>
    public double? HeightM { get; init; }

    /// <summary>Across the wind.</summary>
    public double? WidthM { get; init; }

    /// <summary>Along the wind.</summary>
    public double? DepthM { get; init; }

    /// <summary>Narrowest width of the foot.</summary>
    public double? BaseM { get; init; }

    /// <summary>As it stands, dry, with what is in it.</summary>
    public double? MassKg { get; init; }

    /// <summary>Soaked.</summary>
    public double? MassWetKg { get; init; }

    /// <summary>Foot above the ground.</summary>
    public double? RaisedM { get; init; }

    public Standing? Standing { get; init; }

    public Surface? Surface { get; init; }

    /// <summary>Force coefficient on the outline that faces the wind; of the crown, where there is one.</summary>
    public double? Drag { get; init; }

    /// <summary>Coefficient on what it stands on, dry; taken from <see cref="Surface"/> when null.</summary>
    public double? Friction { get; init; }

    /// <summary>Share of the outline that stops the wind, 0 to 1: 1 for a board, 0.1 for open wire.</summary>
    public double? Solidity { get; init; }

    /// <summary>Share of the outline that climbers cover, 0 to 1.</summary>
    public double? ClimberCover { get; init; }

    /// <summary>What it holds when full, litres of water.</summary>
    public double? HoldsL { get; init; }

    /// <summary>How full it is, 0 to 1; the water is not in <see cref="MassKg"/>.</summary>
    public double? Filled { get; init; }

    /// <summary>Roof that drains into it, m² seen from above.</summary>
    public double? CatchmentM2 { get; init; }

    /// <summary>Height of the pot of a potted plant; the rest is crown.</summary>
    public double? PotHeightM { get; init; }

    /// <summary>Stem diameter at breast height.</summary>
    public double? StemM { get; init; }

    /// <summary>From the lowest leaves to the top.</summary>
    public double? CrownDepthM { get; init; }

    public double? YearsInGround { get; init; }

    /// <summary>Posts that carry one piece.</summary>
    public int? Posts { get; init; }

    /// <summary>Width of a post.</summary>
    public double? PostM { get; init; }

    /// <summary>How deep it stands in the ground.</summary>
    public double? PostDeepM { get; init; }

    /// <summary>What ties, straps and anchors hold together as a working load, N.</summary>
    public double? TieN { get; init; }

    /// <summary>Gust at the thing, m/s, at which one in two fails, for things without a formula or from the gardener's own experience.</summary>
    public double? HeldToMps { get; init; }

    /// <summary>The narrower of width and depth: what has to go through a door.</summary>
    public double? NarrowestM => WidthM is { } width && DepthM is { } depth ? Math.Min(width, depth) : WidthM ?? DepthM;

    /// <summary>These figures, and others where these say nothing.</summary>
    public ItemBuild Or(ItemBuild other) => new()
    {
        HeightM = HeightM ?? other.HeightM,
        WidthM = WidthM ?? other.WidthM,
        DepthM = DepthM ?? other.DepthM,
        BaseM = BaseM ?? other.BaseM,
        MassKg = MassKg ?? other.MassKg,
        MassWetKg = MassWetKg ?? other.MassWetKg,
        RaisedM = RaisedM ?? other.RaisedM,
        Standing = Standing ?? other.Standing,
        Surface = Surface ?? other.Surface,
        Drag = Drag ?? other.Drag,
        Friction = Friction ?? other.Friction,
        Solidity = Solidity ?? other.Solidity,
        ClimberCover = ClimberCover ?? other.ClimberCover,
        HoldsL = HoldsL ?? other.HoldsL,
        Filled = Filled ?? other.Filled,
        CatchmentM2 = CatchmentM2 ?? other.CatchmentM2,
        PotHeightM = PotHeightM ?? other.PotHeightM,
        StemM = StemM ?? other.StemM,
        CrownDepthM = CrownDepthM ?? other.CrownDepthM,
        YearsInGround = YearsInGround ?? other.YearsInGround,
        Posts = Posts ?? other.Posts,
        PostM = PostM ?? other.PostM,
        PostDeepM = PostDeepM ?? other.PostDeepM,
        TieN = TieN ?? other.TieN,
        HeldToMps = HeldToMps ?? other.HeldToMps,
    };
}
