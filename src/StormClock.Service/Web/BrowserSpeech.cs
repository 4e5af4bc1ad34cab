using StormClock.Core.Garden;
using StormClock.Service.Wording;

namespace StormClock.Service.Web;

/// <summary>The language that a browser asks for (RFC 9110, 12.5.4), where no person of a book is known.</summary>
internal static class BrowserSpeech
{
    public static Speech Of(HttpRequest request)
    {
        var wanted = from entry in request.GetTypedHeaders().AcceptLanguage
                     where entry.Quality is null or > 0 && entry.Value.HasValue
                     orderby entry.Quality ?? 1 descending
                     select entry.Value.Value!.Split('-')[0].ToLowerInvariant();
        var known = wanted.FirstOrDefault(LanguageTags.All.ContainsKey);
        return Speech.English(UnitSystem.UsCustomary) with { Language = known is null ? Language.English : LanguageTags.All[known] };
    }
}
