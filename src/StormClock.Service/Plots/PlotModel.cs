using StormClock.Core.Garden;

namespace StormClock.Service.Plots;

/// <summary>How the work on an item stands.</summary>
public enum PlotState
{
    /// <summary>Some of it is still to be done.</summary>
    Open,

    /// <summary>All of it was answered done.</summary>
    Done,

    /// <summary>None is open, and some was answered "cannot" or "later".</summary>
    Later,

    /// <summary>The book has no work for it.</summary>
    Nothing,
}

/// <param name="Number">By which it is known on the drawing; it stays when others are placed.</param>
public sealed record PlotThing(Item Item, int Number, PlotState State);

/// <param name="Letter">By which it is known on the drawing: A to Z, then AA and so on.</param>
public sealed record PlotPlace(Area Area, string Letter, IReadOnlyList<PlotThing> Things);

/// <summary>What is to be drawn of one site.</summary>
public sealed record PlotModel(Site Site, IReadOnlyList<PlotPlace> Places)
{
    public IEnumerable<PlotThing> Things => Places.SelectMany(place => place.Things);

    /// <param name="states">What was last said of jobs, in the storm that is on.</param>
    public static PlotModel Of(GardenBook book, Site site, IReadOnlyList<JobState> states)
    {
        var said = states.ToDictionary(state => state.JobId, state => state.Progress);
        var places = new List<PlotPlace>();
        var number = 0;
        foreach (var area in book.Areas.Where(area => area.SiteId == site.Id))
        {
            var things = book.Items.Where(item => item.AreaId == area.Id).Select(item => new PlotThing(item, ++number, StateOf(item, said))).ToList();
            places.Add(new(area, LetterOf(places.Count), things));
        }

        return new(site, places);
    }

    private static PlotState StateOf(Item item, Dictionary<string, JobProgress> said)
    {
        if (item.Jobs.Count == 0) return PlotState.Nothing;
        var progress = item.Jobs.Select(job => said.GetValueOrDefault(job.Id, JobProgress.Open)).ToHashSet();
        if (progress.Overlaps([JobProgress.Open, JobProgress.Started])) return PlotState.Open;
        return progress.Overlaps([JobProgress.Cannot, JobProgress.Later]) ? PlotState.Later : PlotState.Done;
    }

    private static string LetterOf(int index) => index < 26 ? $"{(char)('A' + index)}" : LetterOf(index / 26 - 1) + LetterOf(index % 26);
}

/// <summary>A photo of the gardener's sketch under the drawing, from the upper left of the grid on.</summary>
/// <param name="Address">Where its photo is had from.</param>
/// <param name="WidthDm">Of the ground that it shows, as she says.</param>
public sealed record PlotSketch(string Address, int WidthDm, int WidthPx, int HeightPx)
{
    public int DepthDm => (int)Math.Round((double)WidthDm * HeightPx / WidthPx);
}
