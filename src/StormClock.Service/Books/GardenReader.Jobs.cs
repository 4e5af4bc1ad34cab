using StormClock.Core.Garden;
using StormClock.Core.Worth;

namespace StormClock.Service.Books;

/// <summary>What is done to an item: as written, or as is usual for its kind.</summary>
public sealed partial class GardenReader
{
    /// <summary>Without jobs the kind's own are taken; <c>jobs: none</c> is the gardener's word that there is nothing to be done.</summary>
    private Item WithJobs(YamlFields fields, Item item)
    {
        if (!fields.Has("jobs")) return item with { Jobs = UsualJobs(fields, item), JobsTypical = true };
        return fields.Peek("jobs") == "none" ? item : item with { Jobs = Jobs(fields, item) };
    }

    private List<Job> Jobs(YamlFields itemFields, Item item)
    {
        var jobs = new List<Job>();
        foreach (var fields in itemFields.Maps("jobs", $"job of {itemFields.Subject}", GardenKeys.Job, "- {kind: tie, minutes: 20}"))
        {
            var kind = JobKind(fields);
            jobs.Add(Job(fields, item, kind, JobId(item.Id, kind, jobs)));
            jobFields.TryAdd(jobs[^1].Id, fields);
        }

        return jobs;
    }

    private static JobKind JobKind(YamlFields fields)
    {
        if (fields.OptionalText("kind", "tie") is { } written && Tokens.UndoKinds.ContainsKey(written))
        {
            fields.Fault("kind", $"is '{written}', which is done after the storm; write it as 'undo' of the job that it undoes");
            return default;
        }

        return fields.Choice<JobKind>("kind", Tokens.JobKinds, null);
    }

    /// <summary><c>item-id/kind</c>, with -2, -3 for a repeat of the same kind.</summary>
    private static string JobId(string itemId, JobKind kind, List<Job> before)
    {
        var repeats = before.Count(job => job.Kind == kind);
        return repeats == 0 ? $"{itemId}/{Tokens.Of(kind)}" : $"{itemId}/{Tokens.Of(kind)}-{repeats + 1}";
    }

    /// <summary>What is left out is taken from the kind's job of the same kind, else from the general rules.</summary>
    private Job Job(YamlFields fields, Item item, JobKind kind, string id)
    {
        var traits = TraitsOf(item);
        var usual = KindJobOf(item, kind);
        var store = fields.Map("store", "store", GardenKeys.JobStore, "{id: shed, floor_m2: 1.5}");
        if (store is not null) references.Add(new(fields, store.LineOf("id"), "store", store.Text("id", "shed")));
        return new Job(
            id,
            item.Id,
            kind,
            fields.Whole("minutes", 1, MostMinutes, usual is null ? null : MinutesOf(usual, item), "20"),
            fields.Whole("people", 1, 2, usual?.People ?? 1, "1"),
            fields.Choice<WorkClass>("class", Tokens.Classes, usual?.Class ?? JobDefaults.ClassOf(kind, traits)),
            After(fields, item.Id),
            fields.Number("value", 0, 10_000_000, item.ValueUsd, "120"),
            ItemWorth.HazardUsd(item),
            fields.Has("materials")
                ? [.. fields.Maps("materials", "material", GardenKeys.Material, "- {material: rope, quantity: 8, unit: m}").Select(Need)]
                : MaterialsOf(usual, item),
            store?.OptionalText("id", "shed"),
            store?.Number("floor_m2", 0, 1000, 0, "1.5") ?? 0,
            store?.Number("volume_m3", 0, 1000, 0, "0.8") ?? 0,
            fields.OptionalText("fallback", "lay them down in the lee of the wall"),
            Undo(fields, kind),
            fields.Flag("last_round", JobDefaults.LastRoundOf(kind, traits)))
        {
            Caution = fields.OptionalText("caution", "the lid has a sharp rim") ?? usual?.Caution,
            PartKg = fields.OptionalNumber("part_kg", 0.1, 1000, "9") ?? usual?.PartKg,
            ValueStated = fields.Has("value"),
            LeftOut = LeftOut(fields),
        };
    }

    private static JobParts LeftOut(YamlFields fields) =>
        JobKeys.All.Where(part => !fields.Has(part.Key)).Aggregate(JobParts.None, (parts, part) => parts | part.Part);

    /// <summary>Job ids; a bare kind means the same item's job of that kind.</summary>
    private List<string> After(YamlFields fields, string itemId)
    {
        var after = new List<string>();
        foreach (var word in fields.Words("after", "[fig-pots/tie]"))
        {
            var id = word.Text.Contains('/') ? word.Text : $"{itemId}/{word.Text}";
            after.Add(id);
            references.Add(new(fields, word.Line, "job", id));
        }

        return after;
    }

    private static JobKind? Undo(YamlFields fields, JobKind kind)
    {
        if (!fields.Has("undo")) return JobDefaults.UndoOf(kind);
        if (fields.OptionalText("undo", "untie") is "none") return null;

        return fields.Choice<JobKind>("undo", Tokens.UndoKinds, Core.Garden.JobKind.Check);
    }
}
