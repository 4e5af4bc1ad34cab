namespace StormClock.Service.Web;

/// <summary>Ways from one address of ours to another. They are relative, so that they also hold behind a proxy that puts a folder before our addresses.</summary>
internal static class Ways
{
    /// <summary>To the front page: empty from there and from <c>/keeper</c>, <c>../</c> from what lies one below.</summary>
    public static string Up(HttpRequest request) => Back(request, 1);

    /// <summary>From <c>/g/garden/a/b</c> to <c>/g/garden/</c>: empty from its rooms, <c>../</c> from what lies one below.</summary>
    public static string ToGarden(HttpRequest request) => Back(request, 3);

    private static string Back(HttpRequest request, int depth) => string.Concat(Enumerable.Repeat("../", Math.Max(0, (request.Path.Value ?? "").Count(letter => letter == '/') - depth)));
}
