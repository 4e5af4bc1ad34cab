using System.Globalization;
using StormClock.Core.Garden;
using StormClock.Service.Books;

namespace StormClock.Service.Web.Garden;

/// <summary>A job that is added to a thing on its page: what, how long, how many people. The rest is typical.</summary>
internal static class JobForm
{
    /// <summary>Minutes, as the book has them.</summary>
    private const int Longest = 24 * 60;

    /// <summary>Null where it is not understood.</summary>
    public static (JobKind Kind, int Minutes, int People)? Read(IFormCollection form) =>
        Tokens.JobKinds.TryGetValue(form["job"].ToString(), out var kind)
            && int.TryParse(form["minutes"], NumberStyles.None, CultureInfo.InvariantCulture, out var minutes) && minutes is > 0 and <= Longest
            && int.TryParse(form["people"], NumberStyles.None, CultureInfo.InvariantCulture, out var people) && people is 1 or 2
            ? (kind, minutes, people)
            : null;

    /// <summary>The thing with that job after those it has, or in place of the one of the same kind. Typical jobs stay typical, named by their kind alone.</summary>
    public static Item Add(Item item, (JobKind Kind, int Minutes, int People)? job)
    {
        var (kind, minutes, people) = job!.Value;
        var kept = item.Jobs.Where(known => known.Kind != kind).Select(known => item.JobsTypical ? known with { Typical = false, LeftOut = JobKeys.Every } : known);
        var added = new Job($"{item.Id}/{Tokens.Of(kind)}", item.Id, kind, minutes, people, WorkClass.Ground, [], 0, 0, [], null, 0, 0, null, null, false)
        {
            LeftOut = JobKeys.Every & ~(JobParts.Minutes | JobParts.People),
        };
        return item with { JobsTypical = false, Jobs = [.. kept, added] };
    }
}
