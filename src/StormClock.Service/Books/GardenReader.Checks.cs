using StormClock.Core.Garden;

namespace StormClock.Service.Books;

/// <summary>What can only be judged once all has been read: references, order of work, and whether anybody can do it.</summary>
public sealed partial class GardenReader
{
    private readonly Dictionary<string, YamlFields> personFields = [];
    private readonly Dictionary<string, YamlFields> siteFields = [];
    private readonly Dictionary<string, YamlFields> areaFields = [];
    private readonly Dictionary<string, YamlFields> storeFields = [];
    private readonly Dictionary<string, YamlFields> supplyFields = [];
    private readonly Dictionary<string, YamlFields> itemFields = [];
    private readonly Dictionary<string, YamlFields> jobFields = [];
    private readonly Dictionary<string, (string Unit, int Line)> materialUnits = [];
    private readonly List<Reference> references = [];
    private readonly List<(YamlFields Site, int Line, string Other)> travelWays = [];

    /// <param name="Fields">What names something else.</param>
    /// <param name="To">What sort of thing is named: site, area, store or job.</param>
    private sealed record Reference(YamlFields Fields, int Line, string To, string Id);

    private static void Once(Dictionary<string, YamlFields> before, string id, YamlFields fields, string noun)
    {
        if (id.Length == 0 || before.TryAdd(id, fields)) return;

        var key = fields.Has("id") ? "id" : "material";
        fields.Fault(key, $"is used twice: the {noun} in {before[id].Place} has it too; {(key == "id" ? "give one of them another id" : "add the two quantities up")}");
    }

    /// <summary>Far above any garden; keeps a runaway file from costing minutes.</summary>
    private const int MostJobs = 2000;

    private const int MostSites = 50;

    private void Check(GardenBook book)
    {
        if (jobFields.Count > MostJobs || book.Sites.Count > MostSites)
        {
            faults.Add(1, $"the book has {jobFields.Count} jobs on {book.Sites.Count} sites, more than {MostJobs} or {MostSites}; split it into several gardens");
            return;
        }

        foreach (var reference in references) CheckReference(reference);
        CheckTravel(book);
        CheckOrder(book);
        foreach (var job in book.Jobs) CheckHands(book, job);
    }

    private void CheckReference(Reference reference)
    {
        var (fields, line, to, id) = reference;
        IReadOnlyCollection<string> known = to switch { "site" => siteFields.Keys, "area" => areaFields.Keys, "store" => storeFields.Keys, _ => jobFields.Keys };
        if (id.Length == 0 || known.Contains(id)) return;

        fields.Tell(line, $"{fields.Subject} names the {to} '{YamlFields.Shown(id)}', which is not in the book; {Nearest.Hint(id, known)}");
    }

    private void CheckTravel(GardenBook book)
    {
        foreach (var (site, line, other) in travelWays.Where(way => !siteFields.ContainsKey(way.Other)))
            site.Tell(line, $"travel_minutes of {site.Subject} names the site '{YamlFields.Shown(other)}', which is not in the book; {Nearest.Hint(other, siteFields.Keys)}");

        foreach (var site in book.Sites.Where(site => siteFields.ContainsKey(site.Id)))
        {
            foreach (var other in book.Sites.Where(other => string.CompareOrdinal(site.Id, other.Id) < 0 && !site.TravelMinutes.ContainsKey(other.Id)))
                siteFields[site.Id].Tell(siteFields[site.Id].Line, $"no travel time between the sites '{site.Id}' and '{other.Id}'; add travel_minutes: {{{other.Id}: 10}} to '{site.Id}'");
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
            jobFields[id].Fault("after", $"makes a circle: {circle}; take one 'after' out");
            return;
        }

        if (settled.Contains(id) || !after.TryGetValue(id, out var earlier)) return;

        trail.Add(id);
        foreach (var one in earlier) Follow(one, after, trail, settled);
        trail.RemoveAt(trail.Count - 1);
        settled.Add(id);
    }

    /// <summary>
    /// The keeper looks after the installation and is not counted as a pair of hands. What comes with a kind is no fault of
    /// the gardener's: where hands are wanting for it, the plan leaves it out and says so.
    /// </summary>
    private void CheckHands(GardenBook book, Job job)
    {
        var hands = book.People.Where(person => person.Role != PersonRole.Keeper).ToList();
        if (hands.Count == 0 || job.Typical || !jobFields.TryGetValue(job.Id, out var fields)) return;
        var ofKind = KindJobOf(book.ItemOf(job), job.Kind) is not null;
        if (ofKind && job.LeftOut.HasFlag(JobParts.People | JobParts.Class)) return;

        if (job.People > hands.Count)
            fields.Fault("people", $"needs {job.People} people, but the book lists {hands.Count} who can work; add a helper under 'people' or find a way for one");
        else if (job.Class == WorkClass.Ladder && job.People == 1 && !hands.Exists(person => person.LadderAlone))
            fields.Fault("people", "is ladder work for one, but nobody in the book may use a ladder alone; write people: 2, or ladder: alone for a person");
        else if (job.Class == WorkClass.Ladder && hands.TrueForAll(person => person.NoLadder))
            fields.Fault("class", "is ladder work, but nobody in the book goes up a ladder; find a way from the ground, or leave it to somebody who does it for a living");
    }
}
