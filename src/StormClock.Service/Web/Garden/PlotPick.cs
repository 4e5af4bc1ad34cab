using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Books.Edits;

namespace StormClock.Service.Web.Garden;

/// <summary>The area or item that is being placed on the plot map.</summary>
/// <param name="Area">The area itself, or the one the item belongs to, whose site says on which drawing it is.</param>
/// <param name="Item">Null where an area is placed.</param>
public sealed record PlotPick(Area Area, Item? Item)
{
    public bool IsArea => Item is null;

    public string Id => Item?.Id ?? Area.Id;

    public string Name => Item?.Name ?? Area.Name;

    /// <summary>As addresses carry it: <c>area/porch</c>, <c>item/fig-pots</c>.</summary>
    public string Token => IsArea ? $"area/{Area.Id}" : $"item/{Item!.Id}";

    public EntryMark Mark => Item is { } item ? EntryMark.Of(item) : EntryMark.Of(Area);

    public PlotRect? Plot => IsArea ? Area.Plot : null;

    public PlotSpot? Spot => Item?.Spot;

    public bool IsPlaced => Plot is not null || Spot is not null;

    /// <summary>What stands in the fields of a form, by their names; empty while it is not placed.</summary>
    public IReadOnlyDictionary<string, string> Written => (Plot, Spot) switch
    {
        ({ } plot, _) => Fields([plot.LeftDm, plot.TopDm, plot.WidthDm, plot.DepthDm]),
        (_, { } spot) => Fields([spot.XDm, spot.YDm]),
        _ => Fields([]),
    };

    /// <summary>Null where the book has no such area or item.</summary>
    public static PlotPick? Find(GardenBook book, string token) => token.Split('/') switch
    {
        ["area", var id] => book.Areas.FirstOrDefault(area => area.Id == id) is { } area ? new(area, null) : null,
        ["item", var id] => book.Items.FirstOrDefault(item => item.Id == id) is { } item ? new(book.AreaOf(item), item) : null,
        _ => null,
    };

    /// <summary>The book with this placed so; where an area goes elsewhere in its size, all that is placed of it goes along.</summary>
    public BookOutcome<PlotPick> Put(GardenBook book, PlotWish wish) => Item is { } item
        ? Of(BookChange.Put(book, item with { Spot = wish.Spot }, Mark))
        : Of(BookChange.Put(Along(book, wish.Plot), Area with { Plot = wish.Plot }, Mark));

    /// <summary>Another size is no way that things could go, nor is the first placing.</summary>
    private GardenBook Along(GardenBook book, PlotRect? to)
    {
        if (Plot is not { } from || to is null || (to.WidthDm, to.DepthDm) != (from.WidthDm, from.DepthDm)) return book;
        var (rightDm, downDm) = (to.LeftDm - from.LeftDm, to.TopDm - from.TopDm);
        return book with { Items = [.. book.Items.Select(item => item.AreaId == Area.Id && item.Spot is { } spot ? item with { Spot = Gone(spot, rightDm, downDm) } : item)] };
    }

    /// <summary>To the end of the grid at most.</summary>
    private static PlotSpot Gone(PlotSpot spot, int rightDm, int downDm) => new(Math.Clamp(spot.XDm + rightDm, 0, PlotGrid.MostDm), Math.Clamp(spot.YDm + downDm, 0, PlotGrid.MostDm));

    /// <summary>Its mark was just taken from that book, so that nothing can have come between.</summary>
    private static BookOutcome<PlotPick>.Changed Of<T>(BookOutcome<T> outcome)
        where T : class => new(((BookOutcome<T>.Changed)outcome).Book);

    private Dictionary<string, string> Fields(int[] dm) => PlotForm.FieldsOf(this).Zip(dm).ToDictionary(pair => pair.First.Name, pair => PlotText.Metres(pair.Second));
}

/// <summary>Where something shall be; neither where it shall be taken off the drawing.</summary>
public sealed record PlotWish(PlotRect? Plot, PlotSpot? Spot);
