using StormClock.Core.Acknowledgements;

namespace StormClock.Service.Web;

/// <summary>The fixed address of a person's calendar: it outlives storms, and ends when its key is taken away.</summary>
internal static class CalendarLinks
{
    private static readonly Instant Never = Instant.FromUtc(9999, 12, 31, 0, 0);

    /// <summary>Below the pages' address, e.g. <c>c/TOKEN.ics</c>.</summary>
    public static string Path(string gardenId, string personId, AckKey key) =>
        $"c/{new AckToken(AckPurpose.Calendar, gardenId, "", personId, "", Never).Sign(key)}.ics";
}
