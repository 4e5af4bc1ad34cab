namespace StormClock.Core.Plan;

/// <summary>A stretch of time given to a job at a site.</summary>
internal readonly record struct Booking(Instant Start, Instant End, string SiteId);

/// <summary>
/// What one person has been given so far. Walking between sites is kept free on both sides of a job; nobody is in two places.
/// </summary>
internal sealed class PersonCalendar(Func<string, string, Duration> travel)
{
    private readonly List<Booking> bookings = [];

    public bool IsFree(Instant start, Instant end, string siteId)
    {
        foreach (var booked in bookings)
        {
            var walk = booked.SiteId == siteId ? Duration.Zero : travel(booked.SiteId, siteId);
            if (start < booked.End + walk && booked.Start < end + walk) return false;
        }

        return true;
    }

    public void Book(Instant start, Instant end, string siteId) => bookings.Add(new(start, end, siteId));
}
