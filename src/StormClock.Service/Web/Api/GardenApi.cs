using Microsoft.AspNetCore.Http.HttpResults;
using StormClock.Core.Recheck;
using StormClock.Service.Commands;
using StormClock.Service.Desk;
using StormClock.Service.Feeds.Health;
using StormClock.Service.Visits;
using StormClock.Service.Web.Api.Shapes;
using StormClock.Service.Web.Garden;

namespace StormClock.Service.Web.Api;

/// <summary>How gardens stand, what they fear and what they met: only reads.</summary>
internal sealed class GardenApi(ApiDoor door, GardenMemory memory, GardenShelf shelf, GardenDesk desk, FeedWatch watch)
{
    /// <summary>The gardens that the caller may look into, with the stage of each.</summary>
    public Told<ApiGardens> Gardens(HttpContext context) => Told.Of(new ApiGardens(
        [.. from book in Doorkeeper.Of(context).GardensOf(shelf.Books)
            let decision = desk.Latest.GetValueOrDefault(book.Id)
            select new ApiGarden(book.Id, book.Name, decision?.Standing.Stage.Stage, decision?.Leave ?? false)]));

    /// <summary>How a garden stands: stage and reason, when each class of work stops, orders, sources.</summary>
    /// <param name="garden">Id of the garden.</param>
    public Results<Told<ApiNow>, ProblemHttpResult> Now(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Now, decided: true, out var visit, out var refusal)) return refusal;
        return Told.Of(ApiNow.Of(visit, memory.WhoIsIn(visit), SourceHealth.Of(watch, visit.Now)));
    }

    /// <summary>The whole plan, in the shape that the command "plan --json" prints. Not for helpers.</summary>
    /// <param name="garden">Id of the garden.</param>
    public Results<Told<PlanDocument>, ProblemHttpResult> Plan(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Jobs, decided: true, out var visit, out var refusal)) return refusal;
        if (!visit.SeesAll) return ApiProblem.NotThere;

        // A plan from before an order to leave may still be known; none of it is for now.
        return Told.Of(PlanDocument.Of(visit.Book, visit.WorkIsOver ? visit.Decision! with { Plan = null } : visit.Decision!, visit.Now));
    }

    /// <summary>The things of a garden in the order of worry: by the wind at which they fail, against the forecast. Not for helpers.</summary>
    /// <param name="garden">Id of the garden.</param>
    public Results<Told<ApiItems>, ProblemHttpResult> Items(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Worry, decided: false, out var visit, out var refusal)) return refusal;
        return Told.Of(ApiItems.Of(visit, memory.Moves(visit)));
    }

    /// <summary>Past spells of hazard and the present one: what was done in time, what became of things. Not for helpers.</summary>
    /// <param name="garden">Id of the garden.</param>
    public Results<Told<ApiStorms>, ProblemHttpResult> Storms(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Storms, decided: false, out var visit, out var refusal)) return refusal;
        return Told.Of(ApiStorms.Of(visit, memory.Spells(visit), memory.Moves(visit)));
    }
}
