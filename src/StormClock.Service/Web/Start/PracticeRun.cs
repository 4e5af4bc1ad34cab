using StormClock.Core.Formats;
using StormClock.Service.Books;
using StormClock.Service.Commands;
using StormClock.Service.Desk;
using StormClock.Service.Rehearsal;

namespace StormClock.Service.Web.Start;

/// <summary>The practice storm over the practice garden, for whoever wants to see first what would come. Nobody is written to.</summary>
internal sealed class PracticeRun(HostPlan plan, ILogger<PracticeRun> log)
{
    private readonly Lock turn = new();
    private Task<IReadOnlyList<JournalEntry>>? running;

    public bool IsRunning => running is { IsCompleted: false };

    /// <summary>What happened, once it has been played; null before.</summary>
    public IReadOnlyList<JournalEntry>? Events => running is { IsCompletedSuccessfully: true } played ? played.Result : null;

    public bool IsOffered => plan.ConfigFolder is not null && File.Exists(GardenFile);

    private string GardenFile => Path.Combine(ConfigFolder.Practice(plan.ConfigFolder), RehearseCommand.PracticeGarden);

    /// <summary>Messages as they were written, oldest first.</summary>
    public IReadOnlyList<string> Letters => Directory.Exists(Folder) ? [.. Directory.EnumerateFiles(Folder, "*.eml").Order(StringComparer.Ordinal)] : [];

    private string Folder => Path.Combine(plan.DataFolder, "practice");

    /// <summary>Begins it, unless it is under way. It takes some seconds.</summary>
    public void Begin()
    {
        lock (turn)
        {
            if (!IsRunning) running = Task.Run(PlayAsync);
        }
    }

    private async Task<IReadOnlyList<JournalEntry>> PlayAsync()
    {
        try
        {
            var inputs = new Inputs();
            var book = GardenFiles.Read(GardenFile).Value;
            var heard = inputs.Heard(Path.Combine(ConfigFolder.Practice(plan.ConfigFolder), "storm"));
            return book is null ? [] : await Rehearsal.Rehearsal.RunAsync(new(book, heard, Acks.Prompt, Folder, null, null), TextWriter.Null);
        }
        catch (Exception trouble) when (ExitCode.IsOutsideTrouble(trouble))
        {
            log.LogWarning(trouble, "The practice storm could not be played");
            return [];
        }
    }
}
