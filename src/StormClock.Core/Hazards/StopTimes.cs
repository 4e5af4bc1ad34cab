using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>
/// When one class of work stops at one site, over the members in which it does: the first crossing of its own limits or of
/// 34 kt marine, or a time set by an order, whichever is sooner.
/// </summary>
public sealed class StopTimes
{
    private readonly MemberTimes? members;
    private readonly Instant origin;
    private readonly Instant now;
    private readonly Instant? notAfter;
    private readonly Instant? heldTo;

    /// <param name="members">Members in which the wind comes; hours after <paramref name="origin"/>.</param>
    /// <param name="now">When this is said: what is 15 % of the time left counts from it.</param>
    /// <param name="notAfter">A leave-by time that holds for certain; null when there is none.</param>
    public StopTimes(MemberTimes members, Instant origin, Instant now, Instant? notAfter)
    {
        this.members = members.Count > 0 ? members : null;
        this.origin = origin;
        this.now = now;
        this.notAfter = notAfter;
    }

    /// <summary>A stop that is known to the minute.</summary>
    public StopTimes(Instant notAfter) => this.notAfter = notAfter;

    private StopTimes(StopTimes stop, Instant heldTo)
    {
        (members, origin, now, notAfter) = (stop.members, stop.origin, stop.now, stop.notAfter);
        this.heldTo = heldTo;
    }

    /// <summary>Earliest reasonable stop: nothing of the class is planned after it. Null when it never comes.</summary>
    public Instant? Earliest => Moments.Sooner(heldTo, Moments.Sooner(notAfter, members is null ? null : CarefulTimes.Earliest(At(CarefulTimes.TenthShare), At(0.50), now)));

    /// <summary>Most likely stop (50 %).</summary>
    public Instant? Likely => Moments.Sooner(notAfter, members is null ? null : At(0.50));

    /// <summary>Share of members in which work can still go on until <paramref name="end"/>.</summary>
    public double ChanceOpenUntil(Instant end)
    {
        if (end > notAfter || end > heldTo) return 0;
        if (members is null) return 1;
        return 1 - ((double)StoppedBefore((end - origin).TotalHours) / members.Count);
    }

    /// <summary>How many of the sorted arrivals come before an hour.</summary>
    private int StoppedBefore(double hours)
    {
        var (low, high) = (0, members!.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (members.Arrivals[middle] < hours) low = middle + 1;
            else high = middle;
        }

        return low;
    }

    /// <summary>The same stop with work ended at the latest by a time that is held to; what is likely stays as it is.</summary>
    public StopTimes HeldTo(Instant close) => new(this, close);

    private Instant At(double share) => origin + Duration.FromHours(MemberTimes.Quantile(members!.Arrivals, share));
}
