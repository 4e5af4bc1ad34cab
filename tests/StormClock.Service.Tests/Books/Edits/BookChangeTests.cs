using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Books.Edits;

namespace StormClock.Service.Tests.Books.Edits;

public class BookChangeTests
{
    private static readonly GardenBook Book = GardenReader.Read(BookTextTests.Block, "quay.yaml").Value!;

    private static GardenBook Changed<T>(BookOutcome<T> outcome)
        where T : class => Assert.IsType<BookOutcome<T>.Changed>(outcome).Book;

    private static string Refusal<T>(BookOutcome<T> outcome)
        where T : class => string.Join(" | ", Assert.IsType<BookOutcome<T>.Refused>(outcome).Faults.Select(fault => fault.Reason));

    /// <summary>
    /// One row a sort of entry: the entry as a page had it, another hand's version, and the page's own. What comes of the page's
    /// is held for every state in which the book may be by then.
    /// </summary>
    private static void Conflicts<T>(
        T had, T other, T own, Func<T, EntryMark> mark, Func<GardenBook, T, EntryMark?, BookOutcome<T>> put, Func<GardenBook, IReadOnlyList<T>> list, Func<GardenBook, IReadOnlyList<T>, GardenBook> with)
        where T : class
    {
        GardenBook Holding(T? entry) => with(Book, [.. list(Book).Where(one => !ReferenceEquals(one, had)), .. entry is null ? Array.Empty<T>() : [entry]]);

        Assert.Equal(own, list(Changed(put(Holding(had), own, mark(had))))[^1]);
        Assert.Equal(own, list(Changed(put(Holding(own), own, mark(had))))[^1]);
        Assert.Equal(other, Assert.IsType<BookOutcome<T>.Conflict>(put(Holding(other), own, mark(had))).Now);
        Assert.Null(Assert.IsType<BookOutcome<T>.Conflict>(put(Holding(null), own, mark(had))).Now);
        Assert.Equal(had, Assert.IsType<BookOutcome<T>.Conflict>(put(Holding(had), own, new EntryMark("nonsense"))).Now);
        Assert.Equal(list(Book).Count, list(Changed(put(Holding(had), own, mark(had)))).Count);
    }

    [Fact]
    public void Put_EachSort_ChangesOnlyWhatNobodyElseHasChanged()
    {
        var (item, area, person, site, store, supply) = (Book.Items[0], Book.Areas[0], Book.People[0], Book.Sites[0], Book.Stores[0], Book.Supplies[0]);
        Conflicts(item, item with { Count = 5 }, item with { Count = 6 }, EntryMark.Of, BookChange.Put, book => book.Items, (book, list) => book with { Items = list });
        Conflicts(area, area with { Name = "A" }, area with { Name = "B" }, EntryMark.Of, BookChange.Put, book => book.Areas, (book, list) => book with { Areas = list });
        Conflicts(person, person with { LiftKg = 5 }, person with { LiftKg = 6 }, EntryMark.Of, BookChange.Put, book => book.People, (book, list) => book with { People = list });
        Conflicts(site, site with { Name = "A" }, site with { Name = "B" }, EntryMark.Of, BookChange.Put, book => book.Sites, (book, list) => book with { Sites = list });
        Conflicts(store, store with { DoorM = 1 }, store with { DoorM = 2 }, EntryMark.Of, BookChange.Put, book => book.Stores, (book, list) => book with { Stores = list });
        Conflicts(supply, supply with { Quantity = 5 }, supply with { Quantity = 6 }, EntryMark.Of, BookChange.Put, book => book.Supplies, (book, list) => book with { Supplies = list });
    }

    private static void RemovalConflicts<T>(T had, T other, string id, Func<T, EntryMark> mark, Func<GardenBook, string, EntryMark, BookOutcome<T>> remove)
        where T : class
    {
        Assert.Equal(had, Assert.IsType<BookOutcome<T>.Conflict>(remove(Book, id, mark(other))).Now);
        Assert.Null(Assert.IsType<BookOutcome<T>.Conflict>(remove(Book, "gone", mark(had))).Now);
    }

    [Fact]
    public void Remove_ChangedOrRemovedMeanwhile_IsAConflict()
    {
        var (item, area, person, site, store, supply) = (Book.Items[0], Book.Areas[0], Book.People[0], Book.Sites[0], Book.Stores[0], Book.Supplies[0]);
        RemovalConflicts(item, item with { Count = 5 }, item.Id, EntryMark.Of, BookChange.RemoveItem);
        RemovalConflicts(area, area with { Name = "A" }, area.Id, EntryMark.Of, BookChange.RemoveArea);
        RemovalConflicts(person, person with { LiftKg = 5 }, person.Id, EntryMark.Of, BookChange.RemovePerson);
        RemovalConflicts(site, site with { Name = "A" }, site.Id, EntryMark.Of, BookChange.RemoveSite);
        RemovalConflicts(store, store with { DoorM = 1 }, store.Id, EntryMark.Of, BookChange.RemoveStore);
        RemovalConflicts(supply, supply with { Quantity = 5 }, supply.Material, EntryMark.Of, BookChange.RemoveSupply);
    }

    [Fact]
    public void PutGarden_ChangedMeanwhile_IsAConflict()
    {
        var mark = EntryMark.OfGarden(Book);
        var (other, own) = (Book with { Name = "Other" }, Book with { Name = "Own" });

        Assert.Equal("Own", Changed(BookChange.PutGarden(Book, own, mark)).Name);
        Assert.Equal("Own", Changed(BookChange.PutGarden(own, own, mark)).Name);
        Assert.Same(other, Assert.IsType<BookOutcome<GardenBook>.Conflict>(BookChange.PutGarden(other, own, mark)).Now);
        Assert.Contains("cannot get another id", Refusal(BookChange.PutGarden(Book, Book with { Id = "pier" }, mark)));
    }

    /// <summary>The page had the lists of an hour ago; it changes the garden's line and no list.</summary>
    [Fact]
    public void PutGarden_ListsChangedMeanwhile_LeavesThemAsTheyAre()
    {
        var now = Book with { Items = [Book.Items[1]], Limits = new Dictionary<WorkClass, WorkLimit> { [WorkClass.Saw] = new(1, 2) } };

        var changed = Changed(BookChange.PutGarden(now, Book with { Language = Language.Spanish, Clock = ClockForm.Hours12 }, EntryMark.OfGarden(Book)));

        Assert.Equal(["beans"], changed.Items.Select(item => item.Id));
        Assert.Same(now.Limits, changed.Limits);
        Assert.All(changed.People, person => Assert.Equal((Language.Spanish, ClockForm.Hours12), (person.Language, person.Clock)));
    }

    /// <summary>What is typical, or only said in other words, is no change of what she wrote.</summary>
    [Fact]
    public void EntryMark_TypicalFiguresOrOtherWords_IsTheSame()
    {
        var item = Book.Items[0];
        var inKilos = GardenReader.Read(BookTextTests.Block.Replace("mass: 40 lb", "mass: 18.1436948 kg # dry"), "quay.yaml").Value!.Items[0];

        Assert.Equal(EntryMark.Of(item), EntryMark.Of(item with { ValueUsd = 1, Build = ItemBuild.Unknown, Jobs = [], Caution = "x" }));
        Assert.Equal(EntryMark.Of(item), EntryMark.Of(inKilos));
        Assert.NotEqual(EntryMark.Of(item), EntryMark.Of(item with { JobsTypical = false, Jobs = [] }));
        Assert.NotEqual(EntryMark.Of(Book.People[0]), EntryMark.Of(Book.People[0] with { Language = Language.Spanish }));
        Assert.Equal(32, EntryMark.Of(item).Text.Length);
    }

    [Fact]
    public void Put_NewItemWhoseIdIsTaken_GetsTheNextFreeOneWithItsJobs()
    {
        var beans = Book.Items[1];

        var two = Changed(BookChange.Put(Book, beans, null));
        var three = Changed(BookChange.Put(two, beans, null));

        Assert.Equal(["figs", "beans", "beans-2", "beans-3"], three.Items.Select(item => item.Id));
        Assert.Equal([("beans-3/pick", "beans-3", ""), ("beans-3/bundle", "beans-3", "beans-3/pick")], three.Items[3].Jobs.Select(job => (job.Id, job.ItemId, string.Join(' ', job.After))));
        Assert.True(BookText.Rewrite(BookTextTests.Block, "quay.yaml", Book, three).Value is BookRewrite.Kept { Book.Items.Count: 4 });
    }

    [Fact]
    public void Put_NewPlaceOrPersonWhoseIdIsTaken_GetsTheNextFreeOne()
    {
        Assert.Equal("porch-2", Changed(BookChange.Put(Book, Book.Areas[0], null)).Areas[^1].Id);
        Assert.Equal("ines-2", Changed(BookChange.Put(Book, Book.People[0], null)).People[^1].Id);
        Assert.Equal("home-2", Changed(BookChange.Put(Book, Book.Sites[0], null)).Sites[^1].Id);
        Assert.Equal("shed-2", Changed(BookChange.Put(Book, Book.Stores[0], null)).Stores[^1].Id);
    }

    [Fact]
    public void Put_NewSupplyOfAMaterialThatIsThere_IsAConflictUnlessItSaysTheSame()
    {
        var rope = Book.Supplies[0];

        Assert.Equal(rope, Assert.IsType<BookOutcome<Supply>.Conflict>(BookChange.Put(Book, rope with { Quantity = 1 }, null)).Now);
        Assert.Equal(2, Changed(BookChange.Put(Book, rope, null)).Supplies.Count);
        Assert.Equal("stake", Changed(BookChange.Put(Book, new Supply("stake", 3, "each"), null)).Supplies[^1].Material);
    }

    /// <summary>9 minutes there and back in the book; a way back of its own length would stay.</summary>
    [Fact]
    public void PutSite_OtherTravelTime_HoldsForTheSameWayBack()
    {
        var (home, field) = (Book.Sites[0], Book.Sites[1]);
        var longer = home with { TravelMinutes = new Dictionary<string, int> { ["field"] = 14 } };
        var uphill = Book with { Sites = [home, field with { TravelMinutes = new Dictionary<string, int> { ["home"] = 20 } }] };

        Assert.Equal(14, Changed(BookChange.Put(Book, longer, EntryMark.Of(home))).Sites[1].TravelMinutes["home"]);
        Assert.Equal(20, Changed(BookChange.Put(uphill, longer, EntryMark.Of(home))).Sites[1].TravelMinutes["home"]);
    }

    [Fact]
    public void Remove_WhatOthersNeed_IsRefusedWithTheirNames()
    {
        Assert.Equal(
            "area 'porch' cannot be removed: the item 'figs' stands in it; move it to another area or remove it first",
            Refusal(BookChange.RemoveArea(Book, "porch", EntryMark.Of(Book.Areas[0]))));
        var site = Refusal(BookChange.RemoveSite(Book, "home", EntryMark.Of(Book.Sites[0])));
        Assert.Contains("the area 'porch' belongs to it", site);
        Assert.Contains("the store 'shed' belongs to it", site);

        var sample = SampleBook.Read(SampleBook.Good);
        Assert.Contains("the job 'fig-pots/move' brings things into it", Refusal(BookChange.RemoveStore(sample, "shed", EntryMark.Of(sample.Stores[0]))));
        Assert.Contains("the job 'fig-pots/move' needs 2 people", Refusal(BookChange.RemovePerson(sample, "otto", EntryMark.Of(sample.People[1]))));
        var waiting = sample with { Items = [sample.Items[0] with { Jobs = [sample.Items[0].Jobs[0] with { After = ["bean-rows/pick"] }] }, sample.Items[1]] };
        Assert.Contains("the job 'fig-pots/tie' comes after one of its jobs", Refusal(BookChange.RemoveItem(waiting, "bean-rows", EntryMark.Of(waiting.Items[1]))));
        var alone = Book with { People = [Book.People[0]] };
        Assert.Contains("nobody else is in the book", Refusal(BookChange.RemovePerson(alone, "ines", EntryMark.Of(alone.People[0]))));
    }

    [Fact]
    public void Remove_HeldByMany_NamesSomeAndCountsTheRest()
    {
        var crowded = Book with { Items = [.. Enumerable.Range(1, 9).Select(number => Book.Items[0] with { Id = $"figs-{number}" })] };

        var refused = Assert.IsType<BookOutcome<Area>.Refused>(BookChange.RemoveArea(crowded, "porch", EntryMark.Of(Book.Areas[0])));

        Assert.Equal(5, refused.Faults.Count);
        Assert.Equal("area 'porch' is held by 5 more like these", refused.Faults[^1].Reason);
    }

    [Fact]
    public void Remove_NothingInTheWay_LeavesABookThatReads()
    {
        var bare = Changed(BookChange.RemoveItem(Book, "beans", EntryMark.Of(Book.Items[1])));
        bare = Changed(BookChange.RemoveArea(bare, "rows", EntryMark.Of(Book.Areas[1])));
        bare = Changed(BookChange.RemoveSite(bare, "field", EntryMark.Of(Book.Sites[1])));
        bare = Changed(BookChange.RemovePerson(bare, "otto", EntryMark.Of(Book.People[1])));
        bare = Changed(BookChange.RemoveStore(bare, "shed", EntryMark.Of(Book.Stores[0])));
        bare = Changed(BookChange.RemoveSupply(bare, "rope", EntryMark.Of(Book.Supplies[0])));

        var rewrite = BookText.Rewrite(BookTextTests.Block, "quay.yaml", Book, bare).Value!;

        Assert.IsType<BookRewrite.Kept>(rewrite);
        Assert.Equal((1, 1, 1, 1, 1, 1), (bare.Items.Count, bare.Areas.Count, bare.Sites.Count, bare.People.Count, bare.Stores.Count, bare.Supplies.Count));
        Assert.Equal(GardenWriter.Write(bare), GardenWriter.Write(rewrite.Book));
    }

    [Theory]
    [InlineData("Fig pots", "fig-pots")]
    [InlineData("  Fig   pots! ", "fig-pots")]
    [InlineData("Piñón de la abuela Encarnación", "pinon-de-la-abuela-encarnacion")]
    [InlineData("Straße, Œuf & Łódź", "strasse-oeuf-lodz")]
    [InlineData("Otto's 2nd drum", "ottos-2nd-drum")]
    [InlineData("../../etc/passwd", "etc-passwd")]
    [InlineData("C:\\garden.yaml", "c-garden-yaml")]
    [InlineData("", "item")]
    [InlineData("...", "item")]
    [InlineData("いちじく", "item")]
    [InlineData("a\u0000b\nc", "a-b-c")]
    [InlineData("aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa bbbbbbbbbbbbbbbbbbbb", "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa")]
    public void EntryIds_OfAName_MakesAnIdThatABookTakes(string name, string id)
    {
        Assert.Equal(id, EntryIds.Of(name, "item"));
        Assert.True(YamlFields.IsId(EntryIds.Free(id, [id])));
    }

    [Fact]
    public void EntryIds_Taken_GivesTheFirstFreeNumber()
    {
        Assert.Equal("figs", EntryIds.Free("figs", ["pots"]));
        Assert.Equal("figs-2", EntryIds.Free("figs", ["figs", "figs-3"]));
        Assert.Equal("figs-4", EntryIds.Free("figs", ["figs-3", "figs", "figs-2"]));
        var longest = new string('a', 60);
        Assert.True(YamlFields.IsId(EntryIds.Free(longest, [longest])));
    }
}
