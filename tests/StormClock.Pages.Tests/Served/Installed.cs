using StormClock.Service.Commands;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;

namespace StormClock.Pages.Tests.Served;

/// <summary>How a service is set up.</summary>
internal sealed record Installing
{
    /// <summary>Of <c>config/practice</c>, by their ids; none for a box that knows no garden yet.</summary>
    public IReadOnlyList<string> Gardens { get; init; } = ["tern-hook"];

    /// <summary>Letters carry links, and the front page may be seen by strangers; else all is shown and marked at the box.</summary>
    public bool PhonesReachPages { get; init; }

    /// <summary>The storm's alerts, which are marked as an exercise, count as in a rehearsal; no test messages are offered then.</summary>
    public bool Practice { get; init; } = true;

    /// <summary>Changes a garden's file before it is put into the folder.</summary>
    public Func<string, string> Edit { get; init; } = yaml => yaml;
}

/// <summary>An installation's folders, under the temporary folder and gone afterwards.</summary>
internal sealed class Installed : IDisposable
{
    private readonly TempFolder folder = new();

    public Installed(Installing how)
    {
        foreach (var made in new[] { Gardens, Data, Notes }) Directory.CreateDirectory(made);
        foreach (var id in how.Gardens)
        {
            // Practice gardens are never served: this copy says that it is none.
            var yaml = File.ReadAllText(Path.Combine(ConfigFiles.Folder, "practice", $"garden-{id}.yaml"));
            File.WriteAllText(Path.Combine(Gardens, $"{id}.yaml"), how.Edit(yaml.Replace("practice: true", "practice: false", StringComparison.Ordinal)));
        }
    }

    public string Config => folder.File("config");

    public string Gardens => Installation.GardensIn(Config);

    public string Data => folder.File("data");

    public string Notes => Path.Combine(Data, "notes");

    public string Letters => Path.Combine(Data, "outgoing");

    public void Dispose() => folder.Dispose();
}
