using StormClock.Core.Plan;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Core.Worth;

namespace StormClock.Core;

/// <summary>What is decided for one garden at one instant; the service only carries it out.</summary>
/// <param name="Standing">To be remembered until the next decision.</param>
/// <param name="Plan">Null while nothing is due and once the garden is closed.</param>
/// <param name="LeaveBy">A leave-by time that stands, past or to come.</param>
/// <param name="Order">An official order that holds now.</param>
/// <param name="Wanted">Every message that should exist now.</param>
/// <param name="Cause">Id of the advisory, alert or note that the decision rests on; empty when there is none.</param>
/// <param name="NextWake">When time alone may change the decision; null when only news can.</param>
public sealed record Decision(
    GardenStanding Standing, GardenPlan? Plan, Instant? LeaveBy, OfficialOrder Order, IReadOnlyList<Reminder> Wanted, string Cause, Instant? NextWake)
{
    /// <summary>Peak gusts that the forecast brings, by site id; empty while nothing is due.</summary>
    public IReadOnlyDictionary<string, PeakGusts> Peaks { get; init; } = new Dictionary<string, PeakGusts>();

    /// <summary>An order to leave, or a leave-by time, holds.</summary>
    public bool Leave => Order == OfficialOrder.Evacuate || LeaveBy is not null;
}
