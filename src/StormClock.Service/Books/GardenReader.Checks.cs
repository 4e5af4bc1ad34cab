using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>What can only be judged once all has been read: references, order of work, and whether anybody can do it.</summary>
public sealed partial class GardenReader
{
    private readonly Dictionary<string, int> personLines = [];
    private readonly Dictionary<string, int> siteLines = [];
    private readonly Dictionary<string, int> areaLines = [];
    private readonly Dictionary<string, int> storeLines = [];
    private readonly Dictionary<string, int> supplyLines = [];
    private readonly Dictionary<string, int> itemLines = [];
    private readonly Dictionary<string, YamlFields> jobLines = [];
    private readonly Dictionary<string, (string Unit, int Line)> materialUnits = [];
    private readonly List<(int Line, string Subject, string To, string Id)> references = [];
    private readonly List<(int Line, string Subject, string Other)> travelLines = [];

    private static void Once(Dictionary<string, int> lines, string id, YamlFields fields, string noun)
    {
        if (id.Length == 0 || lines.TryAdd(id, fields.Line)) return;

        var key = fields.Has("id") ? "id" : "material";
        fields.Fault(key, $"is used twice: the {noun} in line {lines[id]} has it too; {(key == "id" ? "give one of them another id" : "add the two quantities up")}");
    }

    /// <summary>Far above any garden; keeps a runaway file from costing minutes.</summary>
    private const int MostJobs = 2000;

    private const int MostSites = 50;

    private void Check(GardenBook book)
    {
        if (jobLines.Count > MostJobs || book.Sites.Count > MostSites)
        {
            faults.Add(1, $"the book has {jobLines.Count} jobs on {book.Sites.Count} sites, more than {MostJobs} or {MostSites}; split it into several gardens");
            return;
        }

        foreach (var (line, subject, to, id) in references) CheckReference(line, subject, to, id);
        CheckTravel(book);
        CheckOrder(book);
        foreach (var job in book.Jobs) CheckHands(book, job);
    }

    private void CheckReference(int line, string subject, string to, string id)
    {
        IReadOnlyCollection<string> known = to switch { "site" => siteLines.Keys, "area" => areaLines.Keys, "store" => storeLines.Keys, _ => jobLines.Keys };
        if (id.Length == 0 || known.Contains(id)) return;

        faults.Add(line, $"{subject} names the {to} '{YamlFields.Shown(id)}', which is not in the book; {Nearest.Hint(id, known)}");
    }

    private void CheckTravel(GardenBook book)
    {
        foreach (var (line, subject, other) in travelLines.Where(way => !siteLines.ContainsKey(way.Other)))
            faults.Add(line, $"travel_minutes of {subject} names the site '{YamlFields.Shown(other)}', which is not in the book; {Nearest.Hint(other, siteLines.Keys)}");

        foreach (var site in book.Sites)
        {
            foreach (var other in book.Sites.Where(other => string.CompareOrdinal(site.Id, other.Id) < 0 && !site.TravelMinutes.ContainsKey(other.Id)))
                faults.Add(siteLines.GetValueOrDefault(site.Id), $"no travel time between the sites '{site.Id}' and '{other.Id}'; add travel_minutes: {{{other.Id}: 10}} to '{site.Id}'");
        }
    }

    /// <summary>Follows 'after' from each job; a job met again on its own trail closes a circle.</summary>
    private void CheckOrder(GardenBook book)
    {
        var after = book.Jobs.GroupBy(job => job.Id).ToDictionary(same => same.Key, same => same.First().After);
        var settled = new HashSet<string>();
        foreach (var id in after.Keys) Follow(id, after, [], settled);
    }

    private void Follow(string id, Dictionary<string, IReadOnlyList<string>> after, List<string> trail, HashSet<string> settled)
    {
        var met = trail.IndexOf(id);
        if (met >= 0)
        {
            var circle = string.Join(" after ", trail.Skip(met).Append(id));
            jobLines[id].Fault("after", $"makes a circle: {circle}; take one 'after' out");
            return;
        }

        if (settled.Contains(id) || !after.TryGetValue(id, out var earlier)) return;

        trail.Add(id);
        foreach (var one in earlier) Follow(one, after, trail, settled);
        trail.RemoveAt(trail.Count - 1);
        settled.Add(id);
    }

    /// <summary>The keeper looks after the installation and is not counted as a pair of hands.</summary>
    private void CheckHands(GardenBook book, Job job)
    {
        var hands = book.People.Where(person => person.Role != PersonRole.Keeper).ToList();
        if (hands.Count == 0 || !jobLines.TryGetValue(job.Id, out var fields)) return;

        if (job.People > hands.Count)
            fields.Fault("people", $"needs {job.People} people, but the book lists {hands.Count} who can work; add a helper under 'people' or find a way for one");
        else if (job.Class == WorkClass.Ladder && job.People == 1 && !hands.Exists(person => person.LadderAlone))
            fields.Fault("people", "is ladder work for one, but nobody in the book may use a ladder alone; write people: 2, or ladder_alone: true for a person");
    }
}
