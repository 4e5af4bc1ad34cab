using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Core.Tests.Advisories;
using StormClock.Core.Tests.Garden;

namespace StormClock.Core.Tests;

/// <summary>The one door with what the service would keep between decisions.</summary>
internal sealed class KeptDesk(GardenBook book, Reach? reach = null, QuietHours? quiet = null)
{
    /// <summary>Morning of a work day at the garden (08:00 local).</summary>
    public static readonly Instant Morning = Alerts.Start;

    private readonly StormDesk desk = new(quiet);
    private readonly Dictionary<string, Instant> sent = [];
    private GardenStanding? standing;

    public Dictionary<string, JobState> Jobs { get; } = [];

    public Dictionary<string, Instant> SaidIn { get; } = [];

    /// <summary>Everything sent, in order, with the moment at which it went out.</summary>
    public List<(Reminder Reminder, Instant At)> Sent { get; } = [];

    public Decision At(AdvisoryLedger ledger, Instant now)
    {
        var decision = desk.Decide(ledger, book, standing ?? GardenStanding.Calm(now), Jobs, sent, now, reach: reach, saidIn: SaidIn);
        standing = decision.Standing;
        foreach (var reminder in decision.Wanted.Where(reminder => reminder.Moment <= now && now < reminder.UsefulUntil))
        {
            if (sent.TryAdd(reminder.Key.ToString(), now)) Sent.Add((reminder, now));
        }

        return decision;
    }

    /// <summary>An invented garden with one job for one and one for two.</summary>
    public static GardenBook Book => Gardens.With(
        [Gardens.Person("ada"), Gardens.Person("bo", PersonRole.Helper)],
        Gardens.Job("tie", 60, value: 50), Gardens.Job("lay", 30, WorkClass.Carry, people: 2, value: 80)) with
    {
        Sites = [Alerts.Home],
        Areas = [new("bed", "Bed", "home", Exposure.Open), new("far-bed", "Far bed", "home", Exposure.Open)],
    };
}
