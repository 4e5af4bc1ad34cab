using StormClock.Core.Worth;
using StormClock.Service.Visits;
using StormClock.Service.Web.Views.Garden;

namespace StormClock.Service.Web.Garden;

/// <summary>What goes first, and what earlier storms have taught of it.</summary>
internal sealed class WorryEndpoints(GardenDoor door, GardenMemory memory)
{
    public IResult Worry(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Worry, out var visit, out var refusal)) return refusal;
        return GardenDoor.Page<WorryView>(visit, ("Worries", OrderOfWorry.Of(visit.Book)), ("Moves", memory.Moves(visit)));
    }

    public IResult Storms(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Storms, out var visit, out var refusal)) return refusal;
        return GardenDoor.Page<StormsView>(visit, ("Spells", memory.Spells(visit)), ("Moves", memory.Moves(visit)));
    }
}
