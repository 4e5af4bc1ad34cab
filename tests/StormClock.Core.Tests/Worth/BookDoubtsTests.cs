using StormClock.Core.Garden;
using StormClock.Core.Tests.Garden;
using StormClock.Core.Worth;

namespace StormClock.Core.Tests.Worth;

public class BookDoubtsTests
{
    private static readonly LocalDate Today = new(2027, 9, 1);

    private static readonly ItemBuild Tub = new() { HeightM = 1, WidthM = 0.5, BaseM = 0.4, MassKg = 20, Drag = 0.8, Standing = Standing.Free };

    private static Item Thing(ItemShape shape, ItemBuild build, params Job[] jobs) =>
        new("thing", "Thing", "other", "bed", 1, 50, [], jobs) { Shape = shape, Build = build, Written = build };

    private static IReadOnlyList<Doubt> Doubts(Item item, params Person[] people) => BookDoubts.Of(Book(item, people), Today);

    private static GardenBook Book(Item item, params Person[] people) =>
        Gardens.With(people.Length > 0 ? people : [Gardens.Person("ada")]) with { Surveyed = new(2027, 6, 1), Items = [item] };

    private static Job Work(JobKind kind, int people = 1, WorkClass workClass = WorkClass.Ground) => Gardens.Job("thing/job", 10, workClass, people) with { Kind = kind };

    [Fact]
    public void Of_SoundBook_DoubtsNothing() => Assert.Empty(Doubts(Thing(ItemShape.Body, Tub, Work(JobKind.Tie))));

    /// <summary>Older than twelve months, not dated, dated ahead (common practice, no source).</summary>
    [Theory]
    [InlineData("2026-08-31", "more than 12 months old")]
    [InlineData("2026-09-01", null)]
    [InlineData("2027-09-02", "still to come")]
    [InlineData(null, "does not say when")]
    public void Of_Survey_IsStaleAfterAYear(string? walked, string? said)
    {
        var date = walked is null ? (LocalDate?)null : NodaTime.Text.LocalDatePattern.Iso.Parse(walked).Value;
        var doubts = BookDoubts.Of(Book(Thing(ItemShape.Body, Tub)) with { Surveyed = date }, Today);
        if (said is null) Assert.Empty(doubts);
        else Assert.Contains(said, Assert.Single(doubts).Text);
    }

    [Fact]
    public void Of_MassMissing_IsToldAsUnknownOrTypical()
    {
        Assert.Contains("nothing can be said", Assert.Single(Doubts(Thing(ItemShape.Body, Tub with { MassKg = null }))).Text);
        Assert.Contains("typical", Assert.Single(Doubts(Thing(ItemShape.Body, Tub) with { Written = Tub with { MassKg = null } })).Text);
    }

    /// <summary>Over 3 m (10 ft) a crop asks for bundling (common practice, no source).</summary>
    [Theory]
    [InlineData(2.9, Standing.Rooted, null, false)]
    [InlineData(3.1, Standing.Rooted, null, true)]
    [InlineData(3.1, Standing.Staked, null, false)]
    [InlineData(3.1, Standing.Rooted, JobKind.Bundle, false)]
    [InlineData(3.1, Standing.Rooted, JobKind.Pick, true)]
    public void Of_TallCropWithoutATie_IsDoubtful(double heightM, Standing standing, JobKind? kind, bool doubtful)
    {
        var crop = new ItemBuild { HeightM = heightM, HeldToMps = 20, Standing = standing };
        var doubts = Doubts(Thing(ItemShape.Stems, crop, kind is { } work ? [Work(work)] : []));
        Assert.Equal(doubtful, doubts.Any(doubt => doubt.Text.Contains("taller than 3 m")));
    }

    /// <summary>One lifts 20 kg here; two lift two thirds of 40 kg, 26.7 kg (HSE, M).</summary>
    [Theory]
    [InlineData(20, 1, false)]
    [InlineData(21, 1, true)]
    [InlineData(26, 2, false)]
    [InlineData(27, 2, true)]
    public void Of_PieceTooHeavyForThePeople_IsDoubtful(double massKg, int people, bool doubtful)
    {
        var doubts = Doubts(Thing(ItemShape.Body, Tub with { MassKg = massKg }, Work(JobKind.Move, people)), Gardens.Person("ada"), Gardens.Person("bo"));
        Assert.Equal(doubtful, doubts.Any(doubt => doubt.Text.Contains("lift")));
    }

    /// <summary>The same sums, with the heaviest part of a thing of 60 kg.</summary>
    [Theory]
    [InlineData(26, false)]
    [InlineData(27, true)]
    public void Of_ThingThatComesApart_IsJudgedByItsHeaviestPart(double partKg, bool doubtful)
    {
        var doubts = Doubts(Thing(ItemShape.Body, Tub with { MassKg = 60 }, Work(JobKind.TakeDown, 2) with { PartKg = partKg }), Gardens.Person("ada"), Gardens.Person("bo"));
        Assert.Equal(doubtful, doubts.Any(doubt => doubt.Text.Contains("its heaviest part has")));
    }

    [Fact]
    public void Of_LadderWorkThatNobodyDoes_IsDoubtful()
    {
        var grounded = Gardens.Person("ada") with { NoLadder = true, LadderAlone = false };
        Assert.Contains(Doubts(Thing(ItemShape.Body, Tub, Work(JobKind.Tie, 1, WorkClass.Ladder)), grounded), doubt => doubt.Text.Contains("nobody in the book goes up one"));
        Assert.Contains(Doubts(Thing(ItemShape.Body, Tub, Work(JobKind.Tie, 1, WorkClass.Ladder)), grounded with { NoLadder = false }), doubt => doubt.Text.Contains("goes up one alone"));
    }

    /// <summary>A pot rooted through into the ground is tied or left, not moved (common practice, no source).</summary>
    [Theory]
    [InlineData(JobKind.Move, true)]
    [InlineData(JobKind.LayFlat, true)]
    [InlineData(JobKind.Tie, false)]
    public void Of_RootedThroughPot_IsNotMoved(JobKind kind, bool doubtful) =>
        Assert.Equal(doubtful, Doubts(Thing(ItemShape.Body, Tub with { Standing = Standing.RootedThrough, MassKg = 10 }, Work(kind))).Any(doubt => doubt.Text.Contains("roots")));

    [Fact]
    public void Of_StoreWithANarrowDoor_IsDoubtful()
    {
        var book = Book(Thing(ItemShape.Body, Tub with { WidthM = 1.2, DepthM = 1.1, MassKg = 10 }, Work(JobKind.Move) with { StoreId = "shed" }));
        Assert.Contains(BookDoubts.Of(book with { Stores = [new("shed", "Shed", "home", 4, 8) { DoorM = 0.9 }] }, Today), doubt => doubt.Text.Contains("door"));
        Assert.Empty(BookDoubts.Of(book with { Stores = [new("shed", "Shed", "home", 4, 8) { DoorM = 1.1 }] }, Today));
    }

    [Fact]
    public void Of_HeightsWithoutADatum_AreDoubtful()
    {
        var book = Book(Thing(ItemShape.Body, Tub));
        Assert.Contains("datum", Assert.Single(BookDoubts.Of(book with { Areas = [book.Areas[0] with { GroundM = 2 }] }, Today)).Text);
    }
}
