using StormClock.Core.Garden;
using StormClock.Core.Loads;

namespace StormClock.Core.Worth;

/// <summary>Something in a book that is no fault, but that the gardener should look at.</summary>
/// <param name="Subject">Id of the item, store or person; null for the whole garden.</param>
public sealed record Doubt(string? Subject, string Text);

/// <summary>What is doubtful in a garden book.</summary>
public static class BookDoubts
{
    /// <summary>A survey older than this tells of another garden (C).</summary>
    public const int StaleMonths = 12;

    /// <summary>Taller crops ask for a tie or a bundle (C): ten feet.</summary>
    public const double TallCropM = 3.0;

    public static IReadOnlyList<Doubt> Of(GardenBook book, LocalDate today) =>
    [
        .. Survey(book, today),
        .. book.Items.SelectMany(item => OfItem(book, item)),
        .. Heights(book),
    ];

    private static IEnumerable<Doubt> Survey(GardenBook book, LocalDate today)
    {
        if (book.Surveyed is not { } walked) yield return new(null, "the book does not say when the garden was last walked (garden: surveyed)");
        else if (walked.PlusMonths(StaleMonths) < today) yield return new(null, $"the survey is of {walked:uuuu-MM-dd}, more than {StaleMonths} months old; walk the garden with it");
        else if (walked > today) yield return new(null, $"the survey is dated {walked:uuuu-MM-dd}, which is still to come");
    }

    private static IEnumerable<Doubt> OfItem(GardenBook book, Item item)
    {
        if (ItemChance.Weakest(item.Shape, item.Build) is null) yield return new(item.Id, "nothing can be said of the wind it stands: its size or its mass is missing");
        else if (item.Shape is ItemShape.Body or ItemShape.Sheet or ItemShape.Hung && item.Written.MassKg is null && item.Written.HeldToMps is null)
            yield return new(item.Id, "its mass is the typical one of its kind; weigh one or guess better");

        if (item.Shape == ItemShape.Stems && item.Build.HeightM > TallCropM && !IsHeld(item) && !item.Jobs.Any(job => job.Kind is JobKind.Tie or JobKind.Bundle))
            yield return new(item.Id, "it is taller than 3 m (10 ft) and neither staked nor to be tied or bundled");

        foreach (var job in item.Jobs)
        {
            if (item.Build.Standing == Standing.RootedThrough && TearsRoots(job.Kind)) yield return new(item.Id, "it has rooted through its pot, and moving it would tear the roots; tie it or leave it");
            if (CannotLift(book, item, job) is { } lift) yield return new(item.Id, lift);
            if (job.Class == WorkClass.Ladder && book.People.All(person => person.NoLadder)) yield return new(item.Id, "its work is on a ladder, and nobody in the book goes up one");
            else if (job is { Class: WorkClass.Ladder, People: 1 } && !book.People.Any(person => person.LadderAlone)) yield return new(item.Id, "its work is on a ladder for one, and nobody in the book goes up one alone; let it be work for two");
            if (DoorTooNarrow(book, item, job) is { } door) yield return new(item.Id, door);
        }
    }

    /// <summary>Work that a pot does not bear whose roots have grown into the ground.</summary>
    public static bool TearsRoots(JobKind kind) => kind is JobKind.Move or JobKind.LayFlat or JobKind.Raise or JobKind.TakeDown;

    private static bool IsHeld(Item item) => item.Build.Standing is Standing.Staked or Standing.Tied or Standing.Fastened;

    /// <summary>One piece, or its heaviest part, against what the people of the job can lift together.</summary>
    private static string? CannotLift(GardenBook book, Item item, Job job)
    {
        if (job.LiftedKg(item) is not { } massKg) return null;
        var strongest = book.People.Select(person => person.LiftKg).OrderDescending().Take(job.People).ToList();
        var together = strongest.Count > 1 ? Lifting.TwoPeopleShare * strongest.Sum() : strongest.Sum();
        return massKg <= together ? null : FormattableString.Invariant($"{(job.PartKg is null ? "one piece" : "its heaviest part")} has {massKg:0} kg, and {(job.People == 1 ? "nobody in the book lifts that alone" : "no two people of the book lift that")}; a hand truck, more hands, or leave it and weigh it down");
    }

    private static string? DoorTooNarrow(GardenBook book, Item item, Job job)
    {
        if (job.StoreId is null || book.Stores.FirstOrDefault(store => store.Id == job.StoreId)?.DoorM is not { } doorM) return null;
        return item.Build.NarrowestM is { } widthM && widthM > doorM
            ? FormattableString.Invariant($"it is {widthM:0.##} m wide, and the door of the store is {doorM:0.##} m")
            : null;
    }

    private static IEnumerable<Doubt> Heights(GardenBook book)
    {
        foreach (var site in book.Sites.Where(site => site.Datum is null))
        {
            if (site.GroundM is not null || book.Areas.Any(area => area.SiteId == site.Id && area.GroundM is not null))
                yield return new(site.Id, "heights are given without the datum that they are measured from; they cannot be compared with any water level");
        }
    }
}
