using System.Text.Json;
using StormClock.Core.Garden;
using StormClock.Service.Wording;

namespace StormClock.Service.Books;

/// <summary>How a person goes up a ladder, as books say it.</summary>
internal enum LadderUse { Never, WithSomebody, Alone }

/// <summary>How the words of product.md 2 are written in files: snake case of the names in code.</summary>
internal static class Tokens
{
    /// <summary>What can be done before a storm.</summary>
    public static IReadOnlyDictionary<string, JobKind> JobKinds { get; } = Of<JobKind>(kind => kind < JobKind.Untie);

    /// <summary>What can have to be done after it.</summary>
    public static IReadOnlyDictionary<string, JobKind> UndoKinds { get; } = Of<JobKind>(kind => kind >= JobKind.Untie);

    public static IReadOnlyDictionary<string, WorkClass> Classes { get; } = Of<WorkClass>();

    public static IReadOnlyDictionary<string, Terrain> Terrains { get; } = Of<Terrain>();

    public static IReadOnlyDictionary<string, Exposure> Exposures { get; } = Of<Exposure>();

    public static IReadOnlyDictionary<string, PersonRole> Roles { get; } = Of<PersonRole>();

    public static IReadOnlyDictionary<string, LadderUse> Ladders { get; } = Of<LadderUse>();

    public static IReadOnlyDictionary<string, Standing> Standings { get; } = Of<Standing>();

    public static IReadOnlyDictionary<string, Surface> Surfaces { get; } = Of<Surface>();

    public static IReadOnlyDictionary<string, UnitSystem> Units { get; } = new Dictionary<string, UnitSystem>
    {
        ["us"] = UnitSystem.UsCustomary, ["metric"] = UnitSystem.Metric, ["metric-knots"] = UnitSystem.MetricKnots,
    };

    public static IReadOnlyDictionary<string, Language> Languages => LanguageTags.All;

    public static IReadOnlyDictionary<string, ClockForm> Clocks { get; } = new Dictionary<string, ClockForm> { ["24"] = ClockForm.Hours24, ["12"] = ClockForm.Hours12 };

    public static IReadOnlyDictionary<string, IsoDayOfWeek> Weekdays { get; } = new Dictionary<string, IsoDayOfWeek>
    {
        ["mon"] = IsoDayOfWeek.Monday, ["tue"] = IsoDayOfWeek.Tuesday, ["wed"] = IsoDayOfWeek.Wednesday, ["thu"] = IsoDayOfWeek.Thursday,
        ["fri"] = IsoDayOfWeek.Friday, ["sat"] = IsoDayOfWeek.Saturday, ["sun"] = IsoDayOfWeek.Sunday,
    };

    public static string Of<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.SnakeCaseLower.ConvertName(value.ToString());

    private static Dictionary<string, T> Of<T>(Func<T, bool>? which = null)
        where T : struct, Enum => Enum.GetValues<T>().Where(value => which is null || which(value)).ToDictionary(value => Of(value));
}
