using System.Globalization;
using StormClock.Core.Garden;
using StormClock.Core.Water;
using StormClock.Service.Messages;
using StormClock.Service.Wording;

namespace StormClock.Service.Commands;

/// <summary>What an entered water level reaches in a garden, and when its tanks run over.</summary>
internal static class WaterReport
{
    public static IEnumerable<string> Of(GardenBook book, WaterLevel level)
    {
        var speech = Speech.English(book.Units);
        var water = WaterAtItems.Of(book, level);
        yield return $"  water at {Amounts.Height(level.LevelM, speech)} {level.Datum}, lift things to {Amounts.Height(level.LiftToM, speech)}; orders to leave come before any of this";
        foreach (var wet in water.Items)
        {
            var harm = wet.Harmful ? "; must not get into water: first of all" : "";
            var floats = wet.FloatsInM is { } depth ? $"; floats off in {Amounts.Height(depth, speech)} of water" : "";
            yield return $"    {Plain.Line(wet.Item.Name)}, {Plain.Line(wet.Area.Name)}: foot at {Amounts.Height(wet.FootM, speech)}, reached with a chance of {wet.Chance.ToString("0 %", CultureInfo.InvariantCulture)}, lift by {Amounts.Height(wet.LiftM, speech)}{floats}{harm}";
        }

        if (water.Items.Count == 0 && water.Unknown.Count < book.Items.Count) yield return "    nothing with a known height is likely to be reached; that says nothing of the ways out";
        foreach (var same in water.Unknown.GroupBy(unknown => unknown.Why)) yield return $"    not compared ({same.Count()} of {book.Items.Count} items): {same.Key}";
    }

    public static IEnumerable<string> Tanks(GardenBook book) =>
        from item in book.Items
        where item.Build is { HoldsL: not null, CatchmentM2: > 0 }
        let freeL = item.Build.HoldsL!.Value * (1 - (item.Build.Filled ?? 0))
        let speech = Speech.English(book.Units)
        let mm = Runoff.FirstFlushMm + Runoff.MmToOverflow(freeL, item.Build.CatchmentM2!.Value, Runoff.Share(Catchment.ShingleRoof))
        select $"    {Plain.Line(item.Name)}: {Amounts.Water(freeL, speech)} free, runs over after about {Amounts.Rain(mm, speech)} of rain on its roof";
}
