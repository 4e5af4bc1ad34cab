namespace StormClock.Core.Garden;

/// <summary>What kind of work a job is, which decides the wind it stops at (product.md 2).</summary>
public enum WorkClass { Sheet, Ladder, Saw, Carry, Ground }

/// <summary>What is done to an item; tokens of product.md 2 in snake case (<c>weigh_down</c>).</summary>
public enum JobKind
{
    Pick, Prune, Tie, Bundle, WeighDown, LayFlat, Fill, Drain, TakeDown, Raise, Move, CoverOff, Strap, SwitchOff, Soak,
    Untie, PutBack, Rinse, ReSet, Clear, EmptyWater, Check,
}

/// <summary>How rough the ground around a site is; decides how much of the marine wind reaches it (science.md 2.3).</summary>
public enum Terrain { OpenCoast, OpenFarmland, Suburb, WoodOrTown }

/// <summary>How an area lies to the wind (science.md 2.4).</summary>
public enum Exposure { Open, PartlySheltered, Sheltered, Funnel }

public enum PersonRole { Gardener, Helper, Keeper }

/// <summary>The units a garden's people read; everything is stored in SI.</summary>
public enum UnitSystem { UsCustomary, Metric, MetricKnots }

/// <summary>What people read and are written to in.</summary>
public enum Language { English, Spanish }

/// <summary>How hours are written.</summary>
public enum ClockForm { Hours24, Hours12 }
