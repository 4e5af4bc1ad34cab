using StormClock.Core.Garden;
using StormClock.Core.Units;
using StormClock.Service.Books;

namespace StormClock.Service.Tests.Books;

public class GardenReaderTests
{
    private static GardenBook Book(string text = SampleBook.Good) => SampleBook.Read(text);

    [Fact]
    public void Read_GoodBook_KeepsPeoplePlacesAndHours()
    {
        var book = Book();

        Assert.Equal(("quay", "Quay garden", "America/New_York", UnitSystem.UsCustomary, false), (book.Id, book.Name, book.Zone.Id, book.Units, book.Practice));
        Assert.Equal([PersonRole.Gardener, PersonRole.Helper], book.People.Select(person => person.Role));
        Assert.Equal((14.0, 13.0), (book.People[0].LiftKg, book.People[1].LiftKg));
        Assert.Equal([IsoDayOfWeek.Monday, IsoDayOfWeek.Tuesday], book.People[0].Hours[0].Days);
        Assert.Equal(new WorkHours([], new LocalDate(2027, 9, 22), new LocalTime(7, 30), new LocalTime(18, 0)).ToString(), (book.People[0].Hours[1] with { Days = [] }).ToString());
        Assert.Equal([new LocalDate(2027, 9, 24)], book.People[0].DaysOff);
        Assert.Equal(new GeoPoint(30.1, -84.2), book.Sites[0].At);
        Assert.Equal([Terrain.OpenCoast, Terrain.OpenFarmland], book.Sites.Select(site => site.Terrain));
        Assert.Equal([Exposure.Sheltered, Exposure.Open], book.Areas.Select(area => area.Exposure));
        Assert.Equal((4.0, null), (book.Stores[0].FloorM2, book.Stores[0].VolumeM3));
    }

    [Fact]
    public void Read_TravelGivenOneWay_HoldsBothWays()
    {
        var book = Book();

        Assert.Equal(9, book.Sites[0].TravelMinutes["field"]);
        Assert.Equal(9, book.Sites[1].TravelMinutes["home"]);
    }

    [Fact]
    public void Read_QuantitiesAsWritten_AreStoredInSi()
    {
        var book = Book();

        Assert.Equal(18.14369, book.Items[0].MassKg, 5);
        Assert.Equal(8.04672, book.Limits[WorkClass.Ladder].SustainedMps, 5);
        Assert.Equal(10.72896, book.Limits[WorkClass.Ladder].GustMps, 5);
        Assert.Equal(("m", 30.48), (book.Supplies[0].Unit, Math.Round(book.Supplies[0].Quantity, 6)));
        Assert.Equal(WorkLimit.Defaults[WorkClass.Sheet], book.Limits[WorkClass.Sheet]);
    }

    /// <summary>25 ft are 7.62 m, exact by definition.</summary>
    [Theory]
    [InlineData("quantity: 25 ft", 7.62, "m")]
    [InlineData("quantity: 25, unit: ft", 7.62, "m")]
    [InlineData("quantity: 300 cm", 3, "m")]
    public void Read_MaterialWithUnit_IsStoredInSi(string written, double quantity, string unit)
    {
        var need = Book(SampleBook.Good.Replace("quantity: 8, unit: m", written)).Jobs.First().Materials[0];

        Assert.Equal((quantity, unit), (Math.Round(need.Quantity, 9), need.Unit));
    }

    [Fact]
    public void Read_GoodBook_NamesJobsByItemAndKind()
    {
        Assert.Equal(["fig-pots/tie", "fig-pots/move", "bean-rows/pick", "bean-rows/bundle", "bean-rows/bundle-2"], Book().Jobs.Select(job => job.Id));
    }

    [Fact]
    public void Read_GoodBook_FillsWhatIsNotWritten()
    {
        var jobs = Book().Jobs.ToDictionary(job => job.Id);

        Assert.Equal(["fig-pots/tie"], jobs["fig-pots/move"].After);
        Assert.Equal((2, WorkClass.Carry, JobKind.PutBack), (jobs["fig-pots/move"].People, jobs["fig-pots/move"].Class, jobs["fig-pots/move"].Undo));
        Assert.Equal((1, WorkClass.Ground, JobKind.Untie), (jobs["fig-pots/tie"].People, jobs["fig-pots/tie"].Class, jobs["fig-pots/tie"].Undo));
        Assert.Null(jobs["bean-rows/pick"].Undo);
        Assert.Equal((90.0, 270.0), (jobs["fig-pots/tie"].Value, jobs["fig-pots/tie"].HazardToOthers));
        Assert.Equal((50.0, 0.0), (jobs["bean-rows/pick"].Value, jobs["bean-rows/pick"].HazardToOthers));
    }

    [Fact]
    public void Read_NoIdWritten_TakesTheFileName()
    {
        Assert.Equal("north-plot", GardenReader.Read(SampleBook.Good.Replace("id: quay, ", ""), "/gardens/north-plot.yaml").Value!.Id);
    }

    [Fact]
    public void Read_ByteOrderMarkAndWindowsLines_AreRead()
    {
        Assert.Equal("quay", Book("\uFEFF" + SampleBook.Good.ReplaceLineEndings("\r\n")).Id);
    }

    /// <summary>Job and item kinds with the class of product.md 2 that fits them, undo and last round.</summary>
    [Theory]
    [InlineData("take_down", "hanging", WorkClass.Ladder, JobKind.PutBack, false)]
    [InlineData("take_down", "hoop_house", WorkClass.Sheet, JobKind.PutBack, false)]
    [InlineData("take_down", "umbrella", WorkClass.Carry, JobKind.PutBack, false)]
    [InlineData("cover_off", "fruit_cage", WorkClass.Sheet, JobKind.PutBack, false)]
    [InlineData("move", "cold_frame", WorkClass.Sheet, JobKind.PutBack, true)]
    [InlineData("move", "potted_plant", WorkClass.Carry, JobKind.PutBack, false)]
    [InlineData("raise", "chemicals", WorkClass.Carry, JobKind.PutBack, false)]
    [InlineData("prune", "fruit_tree", WorkClass.Saw, null, false)]
    [InlineData("prune", "shrub", WorkClass.Ground, null, false)]
    [InlineData("lay_flat", "potted_tree", WorkClass.Carry, JobKind.ReSet, false)]
    [InlineData("weigh_down", "furniture", WorkClass.Ground, JobKind.Clear, false)]
    [InlineData("strap", "hive", WorkClass.Ground, JobKind.Untie, true)]
    [InlineData("switch_off", "pump", WorkClass.Ground, JobKind.Check, true)]
    [InlineData("soak", "trough", WorkClass.Ground, null, true)]
    [InlineData("fill", "rain_tank", WorkClass.Ground, null, false)]
    public void Defaults_ByKind_AreTheDocumentedOnes(string jobKind, string itemKind, WorkClass workClass, JobKind? undo, bool lastRound)
    {
        var text = SampleBook.Good.Replace("kind: tall_crop", $"kind: {itemKind}").Replace("{kind: pick, minutes: 35}", $"{{kind: {jobKind}, minutes: 35}}").Replace(", after: [bean-rows/pick]", "");

        var job = Book(text).Items[1].Jobs[0];

        Assert.Equal((workClass, undo, lastRound), (job.Class, job.Undo, job.LastRound));
    }

    [Fact]
    public void Read_WrittenClassUndoAndLastRound_OutrankTheDefaults()
    {
        var job = Book(SampleBook.Good.Replace("{kind: pick, minutes: 35}", "{kind: soak, minutes: 5, class: carry, undo: none, last_round: false, value: 7}")
            .Replace(", after: [bean-rows/pick]", "")).Items[1].Jobs[0];

        Assert.Equal((WorkClass.Carry, null, false, 7.0), (job.Class, job.Undo, job.LastRound, job.Value));
    }

    [Fact]
    public void Read_WorthlessThingThatEndangers_StillWeighs()
    {
        var job = Book(SampleBook.Good.Replace("    value: 90", "    value: 0")).Jobs.First();

        Assert.Equal((0.0, 150.0), (job.Value, job.HazardToOthers));
    }
}
