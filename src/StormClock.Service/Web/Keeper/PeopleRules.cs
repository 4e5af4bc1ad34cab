using StormClock.Core.Garden;
using StormClock.Core.Reminders;

namespace StormClock.Service.Web.Keeper;

/// <summary>What a change of people may not take from a garden.</summary>
internal static class PeopleRules
{
    /// <summary>Key of the text that says why not; null for a change that may be made. What a garden did not have before, it cannot lose.</summary>
    public static string? Broken(GardenBook before, GardenBook after, Func<GardenBook, Reach> reach)
    {
        if (HasGardener(before) && !HasGardener(after)) return "people.last-gardener";
        return Told(after, reach(after)) < Told(before, reach(before)) ? "people.last-told" : null;
    }

    /// <summary>2 when somebody can be told who hears of all that concerns the garden, 1 when somebody can be told at all, else 0.</summary>
    private static int Told(GardenBook book, Reach reach)
    {
        var reached = book.People.Where(person => reach.Of(person).Count > 0).ToList();
        return reached.Count == 0 ? 0 : !HasGardener(book) || reached.Exists(IsGardener) ? 2 : 1;
    }

    private static bool HasGardener(GardenBook book) => book.People.Any(IsGardener);

    private static bool IsGardener(Person person) => person.Role == PersonRole.Gardener;
}
