namespace StormClock.Service.Books;

/// <summary>Units materials are counted in, with the unit they are stored in and the factor to it.</summary>
internal static class MaterialUnits
{
    public static IReadOnlyDictionary<string, (string Stored, double Factor)> All { get; } = new Dictionary<string, (string, double)>
    {
        ["each"] = ("each", 1), ["pair"] = ("pair", 1), ["bag"] = ("bag", 1), ["roll"] = ("roll", 1), ["box"] = ("box", 1), ["sheet"] = ("sheet", 1),
        ["m"] = ("m", 1), ["cm"] = ("m", 0.01), ["ft"] = ("m", 0.3048), ["yd"] = ("m", 0.9144), ["in"] = ("m", 0.0254),
        ["kg"] = ("kg", 1), ["lb"] = ("kg", 0.45359237),
        ["l"] = ("l", 1), ["gal"] = ("l", 3.785411784),
    };
}
