namespace StormClock.Core.Advisories;

/// <summary>How it stands with an alert at one moment.</summary>
public enum AlertState
{
    Stands,

    /// <summary>Its event has ended by the sender's own word. An official end.</summary>
    Over,

    /// <summary>Cancelled, or updated to all clear. An official end.</summary>
    Cancelled,

    /// <summary>
    /// The message ran out, but its sender never said when the event ends: it is no longer good, and yet no official end
    /// (science.md 4.2: its effect stays, marked stale).
    /// </summary>
    Lapsed,
}

/// <summary>An alert as one site sees it.</summary>
/// <param name="Info">The account that counts most for the site; null when the alert has none.</param>
/// <param name="Until">While it stands: when it will end if nothing more is said. Afterwards: when it ended.</param>
public sealed record SiteAlert(
    AlertMessage Message, AlertInfo? Info, AlertWhere Where, AlertBearing Bearing, AlertState State, Instant Until)
{
    /// <summary>A watch or warning of wind for this very place.</summary>
    public bool Holds => Where == AlertWhere.Concerns && Bearing.IsWind();
}
