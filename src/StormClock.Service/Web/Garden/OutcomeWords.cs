using StormClock.Core.Recheck;

namespace StormClock.Service.Web.Garden;

/// <summary>Outcomes as the buttons of a form send them.</summary>
internal static class OutcomeWords
{
    private static readonly Dictionary<string, OutcomeKind> Kinds = Enum.GetValues<OutcomeKind>().ToDictionary(Token);

    public static string Token(OutcomeKind kind) => System.Text.Json.JsonNamingPolicy.SnakeCaseLower.ConvertName(kind.ToString());

    /// <summary>Null for no word of ours.</summary>
    public static OutcomeKind? Parse(string word) => Kinds.TryGetValue(word, out var kind) ? kind : null;
}
