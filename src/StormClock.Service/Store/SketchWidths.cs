using System.Globalization;

namespace StormClock.Service.Store;

/// <summary>How much ground the sketch of a site shows from left to right, as the gardener says, in decimetres.</summary>
public static class SketchWidths
{
    /// <summary>Null where none was given.</summary>
    public static int? Find(StoreReader reader, string gardenId, string siteId) =>
        Meta.Find(reader, Key(gardenId, siteId)) is { } text ? int.Parse(text, CultureInfo.InvariantCulture) : null;

    public static void Put(StoreTransaction transaction, string gardenId, string siteId, int widthDm) =>
        Meta.Put(transaction, Key(gardenId, siteId), widthDm.ToString(CultureInfo.InvariantCulture));

    private static string Key(string gardenId, string siteId) => $"sketchWidth|{gardenId}|{siteId}";
}
