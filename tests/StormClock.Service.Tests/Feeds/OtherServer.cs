using System.Net;
using WireMock.RequestBuilders;
using WireMock.ResponseBuilders;
using WireMock.Server;

namespace StormClock.Service.Tests.Feeds;

/// <summary>
/// A web server that is not of this house, on a port of its own for each fixture: what it understands by conditional requests, pauses and
/// redirects is an independent check on what <see cref="StubServer"/> and the client take for granted alike.
/// </summary>
public sealed class OtherServer : IDisposable
{
    private readonly WireMockServer server = WireMockServer.Start();

    public Uri At(string path) => new(new Uri(server.Urls[0]), path);

    public int AskedFor(string path) => server.LogEntries.Count(entry => entry.RequestMessage.Path == path);

    /// <summary>Values of a header of the requests for a path, in their order; "" where one had none.</summary>
    public IReadOnlyList<string> HeaderOf(string path, string header) =>
    [
        .. server.LogEntries.Where(entry => entry.RequestMessage.Path == path)
            .Select(entry => entry.RequestMessage.Headers is { } all && all.TryGetValue(header, out var values) ? values.ToString() : ""),
    ];

    /// <summary>The same answer every time.</summary>
    public void Always(string path, IResponseBuilder answer) => server.Given(Ask(path)).AtPriority(10).RespondWith(answer);

    /// <summary>To requests with such a header, before any other answer.</summary>
    public void When(string path, string header, string value, IResponseBuilder answer) =>
        server.Given(Ask(path).WithHeader(header, value)).AtPriority(1).RespondWith(answer);

    /// <summary>One answer after the other; the last one stays.</summary>
    public void InTurn(string path, params IResponseBuilder[] answers)
    {
        for (var i = 0; i < answers.Length; i++)
        {
            var given = server.Given(Ask(path)).InScenario(path);
            var stated = i == 0 ? given : given.WhenStateIs($"{i}");
            (i < answers.Length - 1 ? stated.WillSetStateTo($"{i + 1}") : stated).RespondWith(answers[i]);
        }
    }

    public static IResponseBuilder Answer(HttpStatusCode status = HttpStatusCode.OK, byte[]? body = null, params (string Name, string Value)[] headers)
    {
        var answer = Response.Create().WithStatusCode(status);
        foreach (var (name, value) in headers) answer = answer.WithHeader(name, value);
        return body is null ? answer : answer.WithBody(body);
    }

    public void Dispose() => server.Dispose();

    private static IRequestBuilder Ask(string path) => Request.Create().WithPath(path).UsingGet();
}
