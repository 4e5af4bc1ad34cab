using StormClock.Core.Recheck;
using StormClock.Core.Worth;
using StormClock.Service.Store;
using StormClock.Service.Visits;
using StormClock.Service.Web.Views.Garden;

namespace StormClock.Service.Web.Garden;

/// <summary>What goes first, and what earlier storms have taught of it.</summary>
internal sealed class WorryEndpoints(GardenDoor door, StormStore store)
{
    public IResult Worry(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Worry, out var visit, out var refusal)) return refusal;
        return GardenDoor.Page<WorryView>(visit, ("Worries", OrderOfWorry.Of(visit.Book)), ("Moves", Moves(visit)));
    }

    public IResult Storms(string garden, HttpContext context)
    {
        if (!door.TryEnter(context, garden, GardenRoom.Storms, out var visit, out var refusal)) return refusal;
        var id = visit.Book.Id;
        var spells = store.Read(reader =>
        {
            var outcomes = Outcomes.OfGarden(reader, id);
            return Episodes.OfGarden(reader, id).Select(record => Spell.Of(record, JobStates.OfEpisode(reader, id, record.EpisodeId), outcomes)).ToList();
        });
        return GardenDoor.Page<StormsView>(visit, ("Spells", spells), ("Moves", Moves(visit)));
    }

    private IReadOnlyList<LimitMove> Moves(GardenVisit visit) =>
        LimitHistory.Of(visit.Book, [.. store.Read(reader => Outcomes.OfGarden(reader, visit.Book.Id)).Select(found => found.Outcome)]);
}
