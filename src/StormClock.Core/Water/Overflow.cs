namespace StormClock.Core.Water;

/// <summary>Rain over some hours, evenly within them.</summary>
/// <param name="Mm">Depth over the whole of the time.</param>
public sealed record RainSpell(Instant From, Instant To, double Mm);

/// <summary>When a tank under a roof runs over.</summary>
public static class Overflow
{
    /// <summary>
    /// Walks through the rain until the free volume is full; null when it holds all of it. The first half millimetre wets the roof.
    /// </summary>
    /// <param name="rain">In order of time, without overlaps.</param>
    /// <param name="areaM2">Roof seen from above.</param>
    /// <param name="share">Of the rain that runs off; see <see cref="Runoff.Share"/>.</param>
    public static Instant? At(IReadOnlyList<RainSpell> rain, double freeL, double areaM2, double share)
    {
        var stillMm = Runoff.FirstFlushMm + Runoff.MmToOverflow(freeL, areaM2, share);
        foreach (var spell in rain)
        {
            if (spell.Mm >= stillMm) return spell.Mm > 0 ? spell.From + (spell.To - spell.From) * (stillMm / spell.Mm) : spell.From;
            stillMm -= spell.Mm;
        }

        return null;
    }
}
