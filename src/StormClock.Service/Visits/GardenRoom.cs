namespace StormClock.Service.Visits;

/// <summary>The pages of one garden.</summary>
public enum GardenRoom
{
    /// <summary>How things stand, and the next jobs.</summary>
    Now,

    /// <summary>The work in its order.</summary>
    Jobs,

    /// <summary>After the wind, or when it turned away: look, undo, record.</summary>
    After,

    /// <summary>The survey on foot.</summary>
    Walk,

    /// <summary>The gardener's own drawing.</summary>
    PlotMap,

    /// <summary>What goes first.</summary>
    Worry,

    /// <summary>Earlier spells.</summary>
    Storms,
}

public static class GardenRooms
{
    /// <summary>Helpers see their own work and say what became of it; the survey, its values and the people are the gardener's.</summary>
    public static IReadOnlySet<GardenRoom> OpenToHelpers { get; } = new HashSet<GardenRoom> { GardenRoom.Now, GardenRoom.Jobs, GardenRoom.After };
}
