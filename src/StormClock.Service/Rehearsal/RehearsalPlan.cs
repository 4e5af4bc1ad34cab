using StormClock.Core.Garden;
using StormClock.Service.Delivery.Email;
using StormClock.Service.Feeds.Recording;

namespace StormClock.Service.Rehearsal;

/// <summary>How people in a rehearsal press their links.</summary>
internal enum Acks
{
    /// <summary>Nobody presses anything.</summary>
    None,

    /// <summary>Each job is reported done at its planned end, and "I am in" soon after Garden closed.</summary>
    Prompt,

    /// <summary>All of it four hours later.</summary>
    Late,
}

/// <param name="Advisories">In the order of their hearing.</param>
/// <param name="OutputFolder">Messages and the log go here.</param>
/// <param name="DataFolder">Kept database; null for one that is thrown away.</param>
/// <param name="Server">A mail server on this machine; null writes .eml files.</param>
internal sealed record RehearsalPlan(
    GardenBook Garden,
    IReadOnlyList<HeardMessage> Advisories,
    Acks Acks,
    string OutputFolder,
    string? DataFolder,
    EmailSettings? Server);
