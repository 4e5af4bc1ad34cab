using System.Text.Json;
using Microsoft.Extensions.Time.Testing;
using StormClock.Core.Formats.Feeds;
using StormClock.Service.Feeds.Recording;
using StormClock.Service.Feeds.Web;
using StormClock.Service.Tests.EndToEnd;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Feeds;

public sealed class RecordingTests : IDisposable
{
    private static readonly Instant Heard = Instant.FromUtc(2027, 9, 18, 9, 17, 5);

    private readonly TempFolder folder = new();
    private readonly FakeTimeProvider time = new(Heard.ToDateTimeOffset());
    private readonly List<string> told = [];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Record_EveryKindOfAnswer_IsKeptWithTimeStatusAndHeaders()
    {
        await using var server = await StubServer.StartAsync();
        var client = new FeedClient(FeedHttp.Make(), time, FetchLimits.Usual with { Retries = 1, RetryDelay = TimeSpan.Zero }, Recorder());
        server.OnBody("/", StubServer.Gzip(Listener.Message(1)), headers => (headers.ContentEncoding, headers.ETag) = ("gzip", "\"a\""));
        await Ask(null);
        server.OnStatus("/", 304);
        await Ask(new("\"a\"", null));
        server.OnStatus("/", 500);
        await Ask(null);
        server.On("/", Faults.ByName["reset"]);
        await Ask(null);

        var notes = Directory.GetFiles(folder.Path, "*.answer.json").Order(StringComparer.Ordinal).Select(file => JsonDocument.Parse(File.ReadAllText(file)).RootElement).ToList();
        Assert.Equal([200, 304, 500, 500, null, null], notes.Select(note => note.GetProperty("Status") is { ValueKind: JsonValueKind.Number } status ? status.GetInt32() : (int?)null));
        Assert.All(notes, note => Assert.Equal(("a feed", "2027-09-18T09:17:05Z", server.At("/").AbsoluteUri), (note.GetProperty("Feed").GetString(), note.GetProperty("At").GetString(), note.GetProperty("Address").GetString())));
        Assert.Equal("\"a\"", notes[0].GetProperty("Headers").GetProperty("ETag").GetString());
        Assert.Equal(Listener.Message(1), File.ReadAllBytes(Path.Combine(folder.Path, notes[0].GetProperty("BodyFile").GetString()!)));
        Assert.Contains("broke off", notes[4].GetProperty("Trouble").GetString());
        Assert.Empty(told);

        Task<Fetched> Ask(Validators? known) => client.GetAsync(Listener.Source("a feed"), server.At("/"), server.At("/"), known, Cancel);
    }

    [Fact]
    public async Task Record_FolderCannotBeWritten_IsToldOnceAndHarmsNothing()
    {
        await File.WriteAllTextAsync(folder.File("file"), "", Cancel);
        var recorder = new AnswerRecorder(folder.File("file"), time, told.Add);

        for (var i = 0; i < 3; i++) await recorder.KeepAsync(new("a", "b") { Body = Listener.Message(1) });

        Assert.Contains("cannot be recorded", Assert.Single(told));
    }

    [Fact]
    public async Task Read_RecordedAnswers_GivesEachMessageOnceAtItsFirstHearing()
    {
        var recorder = Recorder();
        await Keep(recorder, 2, 200);
        await Keep(recorder, 1, 503);
        await Keep(recorder, 2, 200);
        await recorder.KeepAsync(new("a", "b") { Status = 200, Body = "<html></html>"u8.ToArray() });
        await recorder.KeepAsync(new("a", "b") { Status = 304 });
        await Keep(recorder, 1, 200);

        var (heard, faults) = RecordedFolder.Read(folder.Path, FeedIndexReader.Read);

        Assert.Empty(faults);
        Assert.Equal([Heard, Heard + Duration.FromMinutes(30)], heard.Select(message => message.HeardAt));
        Assert.Equal([Listener.Message(2), Listener.Message(1)], heard.Select(message => message.Raw.Bytes.ToArray()));
    }

    [Fact]
    public async Task Read_NoteOrBodySpoilt_NamesTheFile()
    {
        await Keep(Recorder(), 1, 200);
        File.Delete(Assert.Single(Directory.GetFiles(folder.Path, "*.body")));
        await File.WriteAllTextAsync(folder.File("x.answer.json"), "{\"At\": \"noon\"", Cancel);

        Assert.Equal(2, RecordedFolder.Read(folder.Path, FeedIndexReader.Read).Faults.Count);
    }

    [Fact]
    public async Task Rehearse_RecordedFolder_HearsEachMessageWhenItWasHeard()
    {
        var recorder = Recorder();
        await Keep(recorder, 1, 200);
        time.Advance(TimeSpan.FromMinutes(20));
        await Keep(recorder, 2, 200);

        var run = await CommandRun.RunAsync("rehearse", "--json", "--acks", "none", "--advisories", folder.Path, "--out", folder.File("out"), "--config", Practice.ConfigFiles.Folder);

        Assert.Equal((0, ""), (run.Exit, run.Errors));
        var times = JsonDocument.Parse(run.Output).RootElement.EnumerateArray().Where(entry => entry.GetProperty("kind").GetString() == "advisory").Select(entry => entry.GetProperty("at").GetString());
        Assert.Equal(["2027-09-18T09:17:05Z", "2027-09-18T09:47:05Z"], times);
    }

    private AnswerRecorder Recorder() => new(folder.Path, time, told.Add);

    /// <summary>Ten minutes pass after each.</summary>
    private async Task Keep(AnswerRecorder recorder, int number, int status)
    {
        await recorder.KeepAsync(new("a feed", "https://a.example.org/") { Status = status, Body = Listener.Message(number) });
        time.Advance(TimeSpan.FromMinutes(10));
    }
}
