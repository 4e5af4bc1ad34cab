using System.Diagnostics.CodeAnalysis;
using Microsoft.AspNetCore.Http.HttpResults;
using StormClock.Service.Visits;
using StormClock.Service.Web.Garden;

namespace StormClock.Service.Web.Api;

/// <summary>Lets a program into a room of a garden as the pages let its owner, or says why not.</summary>
internal sealed class ApiDoor(GardenDoor door)
{
    /// <param name="decided">The room shows what was decided, so it stays shut until something was.</param>
    public bool TryEnter(
        HttpContext context, string garden, GardenRoom room, bool decided, [NotNullWhen(true)] out GardenVisit? visit, [NotNullWhen(false)] out ProblemHttpResult? refusal)
    {
        visit = door.Find(context, garden, room);
        refusal = visit is null ? ApiProblem.NotThere : decided && visit.Decision is null ? ApiProblem.Starting : null;
        if (refusal == ApiProblem.Starting) context.Response.Headers.RetryAfter = "60";
        if (refusal is not null) visit = null;
        return visit is not null;
    }
}
