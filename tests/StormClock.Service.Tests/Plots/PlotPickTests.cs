using StormClock.Core.Garden;
using StormClock.Service.Books.Edits;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Web.Garden;

namespace StormClock.Service.Tests.Plots;

public sealed class PlotPickTests
{
    /// <summary>As it is before anybody has placed anything.</summary>
    private static readonly GardenBook Practice = PracticeStorm.Garden with
    {
        Areas = [.. PracticeStorm.Garden.Areas.Select(area => area with { Plot = null })],
        Items = [.. PracticeStorm.Garden.Items.Select(item => item with { Spot = null })],
    };

    /// <summary>Worked by hand: the thing goes as far as the area, and stops at the ends of the grid, 0 and 10000 dm.</summary>
    [Theory]
    [InlineData(10, 10, 10, 10, 30, 25, 30, 25)]
    [InlineData(10, 10, 40, 5, 30, 25, 60, 20)]
    [InlineData(10, 10, 0, 0, 5, 25, 0, 15)]
    [InlineData(10, 10, 0, 0, 0, 0, 0, 0)]
    [InlineData(0, 0, 9_900, 9_950, 200, 40, 10_000, 9_990)]
    public void Put_AreaMoved_MovesItsThingsWithinTheGrid(int left, int top, int toLeft, int toTop, int x, int y, int toX, int toY)
    {
        var area = Practice.Areas[0] with { Plot = new(left, top, 40, 30) };
        var item = Practice.Items.First(item => item.AreaId == area.Id);
        var book = Practice with
        {
            Areas = [area, .. Practice.Areas.Skip(1)],
            Items = [.. Practice.Items.Select(known => known.Id == item.Id ? known with { Spot = new(x, y) } : known)],
        };

        var put = PlotPick.Find(book, $"area/{area.Id}")!.Put(book, new(new(toLeft, toTop, 40, 30), null));
        var changed = Assert.IsType<BookOutcome<PlotPick>.Changed>(put).Book;
        Assert.Equal(new PlotRect(toLeft, toTop, 40, 30), changed.Areas[0].Plot);
        Assert.Equal(new PlotSpot(toX, toY), changed.Items.Single(known => known.Id == item.Id).Spot);
        Assert.Equal(book.Items.Where(known => known.Id != item.Id), changed.Items.Where(known => known.Id != item.Id));
    }

    /// <summary>Things that were placed before their area have not moved by its first placing.</summary>
    [Fact]
    public void Put_AreaPlacedForTheFirstTime_MovesNothing()
    {
        var item = Practice.Items[0];
        var book = Practice with { Items = [item with { Spot = new(7, 8) }, .. Practice.Items.Skip(1)] };
        var put = PlotPick.Find(book, $"area/{item.AreaId}")!.Put(book, new(new(50, 50, 40, 30), null));
        Assert.Equal(book.Items, Assert.IsType<BookOutcome<PlotPick>.Changed>(put).Book.Items);
    }
}
