namespace StormClock.Service.Web;

/// <summary>Ways from one address of ours to another. They are relative, so that they also hold behind a proxy that puts a folder before our addresses.</summary>
internal static class Ways
{
    /// <summary>To the front page: empty from there and from <c>/keeper</c>, <c>../</c> from what lies one below.</summary>
    public static string Up(HttpRequest request) => string.Concat(Enumerable.Repeat("../", Math.Max(0, (request.Path.Value ?? "").Count(letter => letter == '/') - 1)));
}
