using StormClock.Core.Advisories;
using StormClock.Core.Stages;
using StormClock.Core.Tests;
using StormClock.Core.Units;
using StormClock.Service.Commands;
using StormClock.Service.Desk;
using StormClock.Service.Rehearsal;
using StormClock.Service.Tests.Practice;

namespace StormClock.Service.Tests.Rehearsals;

/// <summary>A storm played through the real host with the practice garden moved to a place, and questions to ask of it.</summary>
internal sealed record Rehearsed(IReadOnlyList<JournalEntry> Events, IReadOnlyList<Advisory> Advisories)
{
    public static async Task<Rehearsed> PlayAsync(string folder, GeoPoint? at, Acks acks = Acks.Prompt)
    {
        var inputs = new Inputs();
        var book = inputs.Garden(Path.Combine(ConfigFiles.Folder, "practice", "garden-tern-hook.yaml"))!;
        var heard = inputs.Heard(folder);
        Assert.False(inputs.Report());
        var output = Directory.CreateTempSubdirectory("stormclock-test-");
        try
        {
            var garden = at is { } place ? MovedGarden.To(book, place) : book;
            var events = await Rehearsal.Rehearsal.RunAsync(new(garden, heard, acks, output.FullName, null, null), TextWriter.Null);
            return new(events, [.. heard.Select(entry => entry.Advisory)]);
        }
        finally
        {
            output.Delete(recursive: true);
        }
    }

    public static Task<Rehearsed> ArchiveAsync(string storm, double latDeg, double lonDeg, Acks acks = Acks.Prompt) =>
        PlayAsync(Path.Combine(Shared.Folder("nhc-tcm"), storm), new GeoPoint(latDeg, lonDeg), acks);

    public IReadOnlyList<JournalEntry> Sent => [.. Events.Where(entry => entry.Kind == "sent")];

    /// <summary>When a stage at least as high was first reached; null when it never was.</summary>
    public Instant? First(Stage stage) =>
        Events.FirstOrDefault(entry => entry.Kind is "stage" && entry.Stage >= stage && entry.Stage < Stage.Recheck)?.At;

    public Instant? FirstOf(string kind) => Events.FirstOrDefault(entry => entry.Kind == kind)?.At;
}
