namespace StormClock.Core.Garden;

/// <summary>A crop and how it bears to be picked early (trade.md 3.1).</summary>
/// <param name="RipensOff">What is full grown but not ripe ripens when it is picked.</param>
/// <param name="KeepsDays">How long it keeps in the cool.</param>
/// <param name="ShedsAtMps">Gust at which half of the fruit is down or spoilt though the plant stands.</param>
public sealed record Crop(string Token, string Words, bool RipensOff, double KeepsDays, double ShedsAtMps);

/// <summary>What hangs on the whole line of an item.</summary>
/// <param name="ValueUsd">Worth of all of it when ripe, in the gardener's money.</param>
/// <param name="Ripe">Share that is ripe now, 0 to 1.</param>
/// <param name="Mature">Share that is full grown but not ripe; saved by picking only where the crop ripens off the plant.</param>
public sealed record Harvest(Crop Crop, double ValueUsd, double Ripe, double Mature)
{
    /// <summary>The gardener gave the harvest no value of its own: it is the item's.</summary>
    public bool ValueTypical { get; init; }
}
