using StormClock.Core.Stages;

namespace StormClock.Service.Messages;

/// <summary>When nobody is to be told of work, in messages and on pages alike (product.md 7.1).</summary>
internal static class Halt
{
    /// <summary>An order to leave holds and names no later hour.</summary>
    public static bool LeaveNow(bool leave, Instant? leaveBy, Instant now) => leave && !(leaveBy > now);

    public static bool WorkIsOver(Stage stage, bool leave, Instant? leaveBy, Instant now) =>
        stage == Stage.GardenClosed || LeaveNow(leave, leaveBy, now);
}
