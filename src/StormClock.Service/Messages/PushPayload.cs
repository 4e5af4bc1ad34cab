using System.Text.Encodings.Web;
using System.Text.Json;
using StormClock.Service.Delivery.Push;

namespace StormClock.Service.Messages;

/// <summary>What the service worker of a device is told, as JSON: <c>{"id","title","line","link"}</c>.</summary>
public static class PushPayload
{
    private const int LongestTitle = 120;
    private const int LongestLine = 400;

    /// <summary>Letters of every script as they are, so that they take no room twice; it is never put into a page.</summary>
    private static readonly JsonSerializerOptions Plainly = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Never longer than fits one record; the line is cut at a word until it does, and a link of absurd length is left out.</summary>
    public static string Of(ShortMessage message, string entryId)
    {
        var title = AtWord(message.Title, LongestTitle);
        for (var room = LongestLine; room > 0; room -= 40)
        {
            var json = Json(entryId, title, AtWord(message.Line, room), message.Link);
            if (Fits(json)) return json;
        }

        return Json(entryId, title, AtWord(message.Line, LongestLine), null);
    }

    /// <summary>Cut after the last word that ends within the length, with an ellipsis, which counts too.</summary>
    public static string AtWord(string text, int longest)
    {
        if (text.Length <= longest) return text;

        var end = text.LastIndexOf(' ', longest - 1);
        if (end <= 0) end = char.IsLowSurrogate(text[longest - 1]) ? longest - 2 : longest - 1;
        return string.Concat(text.AsSpan(0, end).TrimEnd([' ', ',', ';', ':', '.']), "…");
    }

    private static bool Fits(string json) => System.Text.Encoding.UTF8.GetByteCount(json) <= PushEncryption.LongestText;

    private static string Json(string id, string title, string line, string? link) => JsonSerializer.Serialize(new { id, title, line, link }, Plainly);
}
