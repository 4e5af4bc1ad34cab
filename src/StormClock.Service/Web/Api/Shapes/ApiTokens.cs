using System.Text.Json;
using StormClock.Core.Reminders;
using StormClock.Service.Messages;
using StormClock.Service.Wording;

namespace StormClock.Service.Web.Api.Shapes;

/// <summary>Closed lists as tokens, and what is said in words beside them.</summary>
internal static class ApiTokens
{
    /// <summary>Snake case, as everywhere in JSON: <c>garden_closed</c>.</summary>
    public static string Of<TEnum>(TEnum value)
        where TEnum : struct, Enum => JsonNamingPolicy.SnakeCaseLower.ConvertName(value.ToString());

    public static IReadOnlyList<string> Sentences(IEnumerable<Caution> cautions, Speech speech) => [.. cautions.Select(caution => CautionWords.Of(caution, speech))];

    /// <summary>What to beware of in one piece of work.</summary>
    public static IReadOnlyList<string> TakeCare(BriefJob? job, Speech speech) => [.. (job?.TakeCare ?? []).Select(speech.Catalogue)];
}
