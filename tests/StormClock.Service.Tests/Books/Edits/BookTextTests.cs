using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Books.Edits;
using StormClock.Service.Tests.Practice;

namespace StormClock.Service.Tests.Books.Edits;

/// <summary>Invented books with remarks wherever somebody may write one; each row shows which lines go and which come.</summary>
public class BookTextTests
{
    internal const string Block = """
        # Our garden
        garden: {id: quay, name: Quay, zone: America/New_York, units: us} # the quay

        people:
          # mornings only
          - id: ines
            name: Ines # my sister
            lift_kg: 14

          - id: otto   # tall
            name: Otto

        sites:
          - id: home
            name: Home
            latitude: 30.1
            longitude: -84.2
            travel_minutes: {field: 9} # by bicycle
          # beyond the ditch
          - id: field
            name: Field
            latitude: 30.2
            longitude: -84.3

        areas:
          - id: porch
            name: Porch
            site: home
            ground: 6 ft 2 in # by the builder
          - id: rows
            name: Rows
            site: field

        stores:
          # the key hangs by the door
          - id: shed
            site: home
            floor_m2: 4
          - id: loft
            site: home

        supplies:
          - material: rope # blue
            quantity: 25 ft
          - material: crate
            quantity: 3

        items:
          # by the steps
          - id: figs
            kind: potted_tree
            area: porch
            count: 3 # one is poorly
            mass: 40 lb

          # needs two
          - id: beans
            kind: tall_crop
            area: rows
            count: 40
            jobs:
              # first thing
              - kind: pick
                minutes: 35 # all hands
              - {kind: bundle, minutes: 50, after: [pick]}
        # the end
        """;

    internal const string Flow = """
        # Our garden
        garden:
          id: quay # never change
          name: Quay
          zone: America/New_York
          units: us
        people:
          # mornings only
          - {id: ines, name: Ines, lift_kg: 14} # my sister
          - { "id": otto, 'name': "Otto", email: otto@example.org }
        sites:
          - {id: home, name: Home, latitude: 30.1, longitude: -84.2, travel_minutes: {field: 9}}
          # beyond the ditch
          - {id: field, name: Field, latitude: 30.2, longitude: -84.3} # rented
        areas:
        - {id: porch, name: Porch, site: home, ground: 6 ft 2 in} # by the builder
        - {id: rows, name: Rows,
           site: field} # on two lines
        stores:
          - {id: shed, site: home, floor_m2: 4} # the key hangs by the door
        supplies:
          - {material: rope, quantity: 100, unit: ft} # blue
          - {material: crate, quantity: 3} # red
        items:
          # by the steps
          - {id: figs, kind: potted_tree, area: porch, count: 3, mass: 40 lb} # one is poorly
          - {id: beans, kind: tall_crop, area: rows, count: 40, jobs: [{kind: pick, minutes: 35}]}
        # the end
        """;

    private static GardenBook Read(string text)
    {
        var read = GardenReader.Read(text, "quay.yaml");
        Assert.True(read.IsGood, string.Join("\n", read.Faults) + "\n" + text);
        return read.Value!;
    }

    private static BookRewrite Rewrite(string text, Func<GardenBook, GardenBook> change)
    {
        var book = Read(text);
        var wanted = change(book);
        var rewrite = BookText.Rewrite(text, "quay.yaml", book, wanted).Value!;
        Assert.Equal(GardenWriter.Write(wanted), GardenWriter.Write(Read(rewrite.Text)));
        Assert.Equal(GardenWriter.Write(wanted), GardenWriter.Write(rewrite.Book));
        return rewrite;
    }

    private static IReadOnlyList<T> With<T>(IReadOnlyList<T> list, int at, Func<T, T> change) => [.. list.Select((one, index) => index == at ? change(one) : one)];

    private static IReadOnlyList<T> Without<T>(IReadOnlyList<T> list, int at) => [.. list.Where((_, index) => index != at)];

    private static readonly Item Basket = new("basket", "Big basket", "hanging", "porch", 2, 0, [], []) { ValueTypical = true, JobsTypical = true };

    /// <summary>What is done, and in each of the two books the lines that go and the lines that come in their place.</summary>
    private static readonly (string Name, Func<GardenBook, GardenBook> Change, string BlockLess, string BlockMore, string FlowLess, string FlowMore)[] Changes =
    [
        ("garden changed", book => book with { Name = "Old quay" },
            "garden: {id: quay, name: Quay, zone: America/New_York, units: us} # the quay",
            "garden: {id: quay, name: \"Old quay\", zone: America/New_York, units: us} # the quay",
            "  name: Quay", "  name: \"Old quay\""),
        ("garden gets a date", book => book with { Surveyed = new LocalDate(2027, 8, 1) },
            "garden: {id: quay, name: Quay, zone: America/New_York, units: us} # the quay",
            "garden: {id: quay, name: Quay, zone: America/New_York, units: us, surveyed: 2027-08-01} # the quay",
            "", "  surveyed: 2027-08-01"),
        ("person changed", book => book with { People = With(book.People, 0, one => one with { LiftKg = 9.5 }) },
            "    lift_kg: 14", "    lift_kg: 9.5",
            "  - {id: ines, name: Ines, lift_kg: 14} # my sister", "  - {id: ines, name: Ines, lift_kg: 9.5} # my sister"),
        ("person gets an address", book => book with { People = With(book.People, 0, one => one with { Email = "ines@example.org" }) },
            "", "    email: \"ines@example.org\"",
            "  - {id: ines, name: Ines, lift_kg: 14} # my sister", "  - {id: ines, name: Ines, email: \"ines@example.org\", lift_kg: 14} # my sister"),
        ("person renamed, with accents", book => book with { People = With(book.People, 1, one => one with { Name = "Óttó \"O\" Ærø" }) },
            "    name: Otto", "    name: \"Óttó \\\"O\\\" Ærø\"",
            "  - { \"id\": otto, 'name': \"Otto\", email: otto@example.org }", "  - { \"id\": otto, 'name': \"Óttó \\\"O\\\" Ærø\", email: otto@example.org }"),
        ("person added", book => book with { People = [.. book.People, new Person("mo", "Mo", null, PersonRole.Helper, [], [], 13, false)] },
            "", "  - {id: \"mo\", name: \"Mo\", role: helper, lift_kg: 13, ladder: with_somebody}",
            "", "  - {id: \"mo\", name: \"Mo\", role: helper, lift_kg: 13, ladder: with_somebody}"),
        ("person removed", book => book with { People = Without(book.People, 1) },
            "  - id: otto   # tall|    name: Otto", "",
            "  - { \"id\": otto, 'name': \"Otto\", email: otto@example.org }", ""),
        ("site changed", book => book with { Sites = With(book.Sites, 1, one => one with { At = new(30.25, -84.3) }) },
            "    latitude: 30.2", "    latitude: 30.25",
            "  - {id: field, name: Field, latitude: 30.2, longitude: -84.3} # rented", "  - {id: field, name: Field, latitude: 30.25, longitude: -84.3} # rented"),
        ("area changed", book => book with { Areas = With(book.Areas, 0, one => one with { Exposure = Exposure.Funnel }) },
            "", "    exposure: funnel",
            "- {id: porch, name: Porch, site: home, ground: 6 ft 2 in} # by the builder", "- {id: porch, name: Porch, site: home, exposure: funnel, ground: 6 ft 2 in} # by the builder"),
        ("area loses a height", book => book with { Areas = With(book.Areas, 0, one => one with { GroundM = null }) },
            "    ground: 6 ft 2 in # by the builder", "",
            "- {id: porch, name: Porch, site: home, ground: 6 ft 2 in} # by the builder", "- {id: porch, name: Porch, site: home} # by the builder"),
        ("area renamed, on two lines", book => book with { Areas = With(book.Areas, 1, one => one with { Name = "Long rows" }) },
            "    name: Rows", "    name: \"Long rows\"",
            "- {id: rows, name: Rows,", "- {id: rows, name: \"Long rows\","),
        ("area added", book => book with { Areas = [.. book.Areas, new Area("gap", "Gap", "home", Exposure.Open)] },
            "", "  - {id: \"gap\", name: \"Gap\", site: \"home\", exposure: open}",
            "", "- {id: \"gap\", name: \"Gap\", site: \"home\", exposure: open}"),
        ("store changed", book => book with { Stores = With(book.Stores, 0, one => one with { FloorM2 = 3 }) },
            "    floor_m2: 4", "    floor_m2: 3",
            "  - {id: shed, site: home, floor_m2: 4} # the key hangs by the door", "  - {id: shed, site: home, floor_m2: 3} # the key hangs by the door"),
        ("store added", book => book with { Stores = [.. book.Stores, new StorePlace("attic", "Attic", "home", 2, null)] },
            "", "  - {id: \"attic\", name: \"Attic\", site: \"home\", floor_m2: 2}",
            "", "  - {id: \"attic\", name: \"Attic\", site: \"home\", floor_m2: 2}"),
        ("first store removed", book => book with { Stores = Without(book.Stores, 0) },
            "  - id: shed|    site: home|    floor_m2: 4", "",
            "stores:|  - {id: shed, site: home, floor_m2: 4} # the key hangs by the door", ""),
        ("supply changed", book => book with { Supplies = With(book.Supplies, 1, one => one with { Quantity = 5 }) },
            "    quantity: 3", "    quantity: 5",
            "  - {material: crate, quantity: 3} # red", "  - {material: crate, quantity: 5} # red"),
        ("supply removed", book => book with { Supplies = Without(book.Supplies, 1) },
            "  - material: crate|    quantity: 3", "",
            "  - {material: crate, quantity: 3} # red", ""),
        ("item changed", book => book with { Items = With(book.Items, 0, one => one with { Count = 4 }) },
            "    count: 3 # one is poorly", "    count: 4 # one is poorly",
            "  - {id: figs, kind: potted_tree, area: porch, count: 3, mass: 40 lb} # one is poorly", "  - {id: figs, kind: potted_tree, area: porch, count: 4, mass: 40 lb} # one is poorly"),
        ("item loses its mass", book => book with { Items = With(book.Items, 0, one => one with { Written = one.Written with { MassKg = null } }) },
            "    mass: 40 lb", "",
            "  - {id: figs, kind: potted_tree, area: porch, count: 3, mass: 40 lb} # one is poorly", "  - {id: figs, kind: potted_tree, area: porch, count: 3} # one is poorly"),
        ("item has nothing to be done", book => book with { Items = With(book.Items, 0, one => one with { Jobs = [], JobsTypical = false }) },
            "", "    jobs: none",
            "  - {id: figs, kind: potted_tree, area: porch, count: 3, mass: 40 lb} # one is poorly", "  - {id: figs, kind: potted_tree, area: porch, count: 3, mass: 40 lb, jobs: none} # one is poorly"),
        ("item added", book => book with { Items = [.. book.Items, Basket] },
            "", "  - id: \"basket\"|    name: \"Big basket\"|    kind: hanging|    area: \"porch\"|    count: 2",
            "", "  - id: \"basket\"|    name: \"Big basket\"|    kind: hanging|    area: \"porch\"|    count: 2"),
        ("item removed", book => book with { Items = Without(book.Items, 0) },
            "  - id: figs|    kind: potted_tree|    area: porch|    count: 3 # one is poorly|    mass: 40 lb", "",
            "  - {id: figs, kind: potted_tree, area: porch, count: 3, mass: 40 lb} # one is poorly", ""),
        ("minutes of a job", book => book with { Items = With(book.Items, 1, one => one with { Jobs = With(one.Jobs, 0, job => job with { Minutes = 20 }) }) },
            "        minutes: 35 # all hands", "        minutes: 20 # all hands",
            "  - {id: beans, kind: tall_crop, area: rows, count: 40, jobs: [{kind: pick, minutes: 35}]}", "  - {id: beans, kind: tall_crop, area: rows, count: 40, jobs: [{kind: pick, minutes: 20}]}"),
        ("limits of her own", book => book with { Limits = new Dictionary<WorkClass, WorkLimit>(book.Limits) { [WorkClass.Saw] = new(7, 9) } },
            "", "limits: {sheet: {sustained: 7.6 m/s, gust: 11.6 m/s}, ladder: {sustained: 8.9 m/s, gust: 11.2 m/s}, saw: {sustained: 7 m/s, gust: 9 m/s}, carry: {sustained: 13.4 m/s, gust: 17.9 m/s}, ground: {sustained: 15 m/s, gust: 20.1 m/s}}|",
            "", "limits: {sheet: {sustained: 7.6 m/s, gust: 11.6 m/s}, ladder: {sustained: 8.9 m/s, gust: 11.2 m/s}, saw: {sustained: 7 m/s, gust: 9 m/s}, carry: {sustained: 13.4 m/s, gust: 17.9 m/s}, ground: {sustained: 15 m/s, gust: 20.1 m/s}}"),
    ];

    public static TheoryData<string, string> Cases
    {
        get
        {
            var cases = new TheoryData<string, string>();
            foreach (var change in Changes)
            {
                foreach (var layout in (string[])["as is", "CRLF", "no final newline", "byte order mark"]) cases.Add(change.Name, layout);
            }

            return cases;
        }
    }

    internal static string Laid(string text, string layout) => layout switch
    {
        "CRLF" => (text + "\n").Replace("\n", "\r\n"),
        "no final newline" => text[..text.LastIndexOf('\n')],
        "byte order mark" => "\uFEFF" + text + "\n",
        _ => text + "\n",
    };

    [Theory, MemberData(nameof(Cases))]
    public void Rewrite_OneChange_TouchesItsLinesOnly(string name, string layout)
    {
        var change = Changes.Single(change => change.Name == name);
        Touches(Laid(Block, layout), change.Change, change.BlockLess, change.BlockMore);
        Touches(Laid(Flow, layout), change.Change, change.FlowLess, change.FlowMore);
    }

    /// <summary>The new lines stand together where the old ones stood, or anywhere when nothing went; no other line is different.</summary>
    private static void Touches(string text, Func<GardenBook, GardenBook> change, string less, string more)
    {
        var rewrite = Rewrite(text, change);

        Assert.IsType<BookRewrite.Kept>(rewrite);
        var newline = text.Contains('\r') ? "\r\n" : "\n";
        var (before, after) = (text.Split(newline), rewrite.Text.Split(newline));
        Assert.DoesNotContain(after, line => line.Contains('\r'));
        var first = before.Zip(after).TakeWhile(pair => pair.First == pair.Second).Count();
        var rest = Math.Min(before.Length, after.Length) - first;
        var last = before.Reverse().Zip(after.Reverse()).Take(rest).TakeWhile(pair => pair.First == pair.Second).Count();
        Assert.Equal((less, more), (string.Join('|', before[first..^last]), string.Join('|', after[first..^last])));
    }

    [Fact]
    public void Rewrite_NothingChanged_IsTheSameText()
    {
        Assert.Equal(new BookRewrite.Kept(Block, Read(Block), false).Text, Rewrite(Block, book => book).Text);
    }

    /// <summary>The count stands in a line of its own: that line, and nothing else of the file, is another one.</summary>
    [Fact]
    public void Rewrite_CountOfEachPracticeItem_ChangesOneLine()
    {
        foreach (var path in ConfigFiles.PracticeGardens)
        {
            var text = File.ReadAllText(path);
            var lines = text.Split('\n');
            var book = Read(text);
            for (var at = 0; at < book.Items.Count; at++)
            {
                var (item, more) = (book.Items[at], book.Items[at].Count + 1);
                var rewrite = Rewrite(text, book => book with { Items = With(book.Items, at, one => one with { Count = more }) });

                Assert.False(Assert.IsType<BookRewrite.Kept>(rewrite).TakesRemarks);
                var line = Array.FindIndex(lines, Array.IndexOf(lines, $"  - id: {item.Id}"), line => line.StartsWith("    count:", StringComparison.Ordinal));
                var wanted = lines.ToArray();
                wanted[line] = $"    count: {more}";
                Assert.Equal(wanted, rewrite.Text.Split('\n'));
            }
        }
    }

    /// <summary>What cannot be said by one key of the entry takes another, or the whole entry, but no other entry.</summary>
    [Theory]
    [InlineData("unit with the number", "    quantity: 25 ft", "    quantity: 3|    unit: kg")]
    [InlineData("length in another unit", "    quantity: 25 ft", "    quantity: 5|    unit: m")]
    [InlineData("way back that was not written", "", "    travel_minutes: {home: 4}")]
    [InlineData("key with another name", "  - id: otto   # tall|    name: Otto|    ladder_alone: false", "  - {id: \"otto\", name: \"Otto\", role: helper, lift_kg: 13, ladder: alone}")]
    public void Rewrite_WrittenOtherwise_TouchesTheEntryOnly(string what, string less, string more) => Touches(
        Block.Replace("    name: Otto", "    name: Otto\n    ladder_alone: false"),
        book => what switch
        {
            "unit with the number" => book with { Supplies = With(book.Supplies, 0, one => one with { Quantity = 3, Unit = "kg" }) },
            "length in another unit" => book with { Supplies = With(book.Supplies, 0, one => one with { Quantity = 5 }) },
            "way back that was not written" => book with { Sites = With(book.Sites, 1, one => one with { TravelMinutes = new Dictionary<string, int> { ["home"] = 4 } }) },
            _ => book with { People = With(book.People, 1, one => one with { LadderAlone = true }) },
        },
        less,
        more);

    /// <summary>The other's default follows from the first one's line: both are written.</summary>
    [Fact]
    public void Rewrite_FirstPersonRemoved_LeavesTheNextAHelper()
    {
        var rewrite = Rewrite(Block, book => book with { People = Without(book.People, 0) });

        Assert.Contains("    role: helper", Assert.IsType<BookRewrite.Kept>(rewrite).Text.Split('\n'));
        Assert.Contains("  # mornings only", rewrite.Text.Split('\n'));
        Assert.Contains("  - id: otto   # tall", rewrite.Text.Split('\n'));
    }

    [Fact]
    public void Rewrite_SectionMissing_IsMadeInItsPlaceWithAGapLikeTheOthers()
    {
        var without = Rewrite(Block, book => book with { Stores = [] });
        var again = Rewrite(without.Text, book => book with { Stores = [new("attic", "Attic", "home", 2, null)] });

        Assert.True(Assert.IsType<BookRewrite.Kept>(without).TakesRemarks);
        Assert.Contains("    site: field\n\nstores:\n  - {id: \"attic\", name: \"Attic\", site: \"home\", floor_m2: 2}\n\n\nsupplies:", Assert.IsType<BookRewrite.Kept>(again).Text);
    }

    [Fact]
    public void Rewrite_AllItemsRemovedAndOneAdded_KeepsTheFile()
    {
        var none = Rewrite(Block, book => book with { Items = [] });
        var one = Rewrite(none.Text, book => book with { Items = [Basket] });

        Assert.Contains("\nitems: []\n# the end", Assert.IsType<BookRewrite.Kept>(none).Text);
        Assert.Contains("\nitems:\n  - id: \"basket\"\n", Assert.IsType<BookRewrite.Kept>(one).Text);
        Assert.StartsWith("# Our garden", one.Text);
    }

    public static TheoryData<string, string> OddLayouts => new()
    {
        { "the whole book in braces", "{garden: {id: quay, name: Quay, zone: America/New_York, units: us}, people: [{id: ines, name: Ines}], sites: [{id: home, name: Home, latitude: 30.1, longitude: -84.2}], areas: [{id: porch, name: Porch, site: home}], items: [{id: figs, kind: potted_tree, area: porch, count: 3}]}" },
        { "a dash by itself", Block[..Block.IndexOf("items:", StringComparison.Ordinal)] + "items:\n  -\n    id: figs\n    kind: potted_tree\n    area: porch\n    count: 3\n" },
    };

    [Theory, MemberData(nameof(OddLayouts))]
    public void Rewrite_EntryAddedInAnOddLayout_WritesTheWholeFile(string layout, string text)
    {
        var rewrite = Rewrite(text, book => book with { Items = [.. book.Items, Basket] });

        Assert.True(rewrite is BookRewrite.Whole, layout);
        Assert.Equal(GardenWriter.Write(rewrite.Book), rewrite.Text);
    }

    /// <summary>One entry is changed where it stands; another number of entries writes the list anew, but nothing else.</summary>
    [Fact]
    public void Rewrite_ListInBrackets_KeepsTheRestOfTheFile()
    {
        const string list = "items: [{id: figs, kind: potted_tree, area: porch, count: 3, mass: 40 lb}, {id: mats, kind: sheet, area: porch, count: 1}] # two";
        var text = Block[..Block.IndexOf("items:", StringComparison.Ordinal)] + list;

        Touches(text, book => book with { Items = With(book.Items, 1, one => one with { Count = 2 }) }, list, list.Replace("count: 1", "count: 2"));
        var added = Assert.IsType<BookRewrite.Kept>(Rewrite(text, book => book with { Items = [.. book.Items, Basket] }));
        Assert.StartsWith(text[..text.IndexOf("items:", StringComparison.Ordinal)] + "items:\n  - id: \"figs\"\n", added.Text);
        Assert.EndsWith("    count: 2 # two", added.Text);
    }

    [Fact]
    public void Rewrite_EntriesInAnotherOrder_WritesTheWholeFile() =>
        Assert.IsType<BookRewrite.Whole>(Rewrite(Block, book => book with { Items = [book.Items[1], book.Items[0]] }));

    /// <summary>Each way to write a text over more than one line, with a change before, in and behind it.</summary>
    [Theory]
    [InlineData(">-\n          leave them\n          in the lee")]
    [InlineData("|-\n          leave them in the lee")]
    [InlineData("\"leave them\n          in the lee\"")]
    [InlineData("leave them\n          in the lee")]
    public void Rewrite_TextOnMoreLines_IsFollowed(string fallback)
    {
        var text = Block.Replace("        minutes: 35 # all hands", $"        fallback: {fallback}\n        minutes: 35 # all hands");

        foreach (var change in (Func<Job, Job>[])[job => job with { Fallback = "lay them down" }, job => job with { Minutes = 7 }, job => job with { Fallback = null }])
        {
            var rewrite = Rewrite(text, book => book with { Items = With(book.Items, 1, one => one with { Jobs = With(one.Jobs, 0, change) }) });
            Assert.IsType<BookRewrite.Kept>(rewrite);
            Assert.Contains("      # first thing", rewrite.Text);
            Assert.Contains(" # all hands", rewrite.Text);
        }
    }

    [Fact]
    public void Rewrite_BookThatCouldNotBeRead_IsRefusedWithTheReasonAndNoLine()
    {
        var book = Read(Block);
        var faults = BookText.Rewrite(Block, "quay.yaml", book, book with { Items = With(book.Items, 0, one => one with { AreaId = "moon" }) }).Faults;

        var fault = Assert.Single(faults);
        Assert.Equal(("the book as changed", 0), (fault.Where, fault.Line));
        Assert.Contains("'moon', which is not in the book", fault.Reason);
    }

    private const string Table = "id,kind,area,count\nreed-mats,sheet,porch,5\n";

    private static readonly string WithTable = Block.Replace("items:", "items_file: plants.csv\n\nitems:");

    private static BookRewrite RewriteTable(string text, Func<GardenBook, GardenBook> change)
    {
        var book = GardenReader.Read(text, "quay.yaml", _ => Table).Value!;
        var wanted = change(book);
        var rewrite = BookText.Rewrite(text, "quay.yaml", book, wanted, _ => Table).Value!;
        Assert.Equal(Sorted(wanted), Sorted(GardenReader.Read(rewrite.Text, "quay.yaml", _ => Table).Value!));
        return rewrite;
    }

    private static string Sorted(GardenBook book) => GardenWriter.Write(book with { Items = [.. book.Items.OrderBy(item => item.Id, StringComparer.Ordinal)] });

    [Fact]
    public void Rewrite_BesideATable_LeavesTheTableAlone()
    {
        var changed = RewriteTable(WithTable, book => book with { Items = With(book.Items, 0, one => one with { Count = 9 }) });
        var added = RewriteTable(WithTable, book => book with { Items = [.. book.Items, Basket] });
        var first = RewriteTable(WithTable[..WithTable.IndexOf("items:", StringComparison.Ordinal)], book => book with { Items = [.. book.Items, Basket] });
        var emptied = RewriteTable(WithTable, book => book with { Items = [book.Items[^1]] });

        Assert.All([changed, added, first, emptied], rewrite => Assert.IsType<BookRewrite.Kept>(rewrite));
        Assert.All([changed, added, first, emptied], rewrite => Assert.Contains("items_file: plants.csv", rewrite.Text));
        Assert.All([changed, added, first, emptied], rewrite => Assert.DoesNotContain("reed-mats", rewrite.Text));
        Assert.Equal(["figs", "beans", "basket", "reed-mats"], added.Book.Items.Select(item => item.Id));
    }

    [Fact]
    public void Rewrite_RowOfATable_BringsTheTableIntoTheBook()
    {
        var rewrite = RewriteTable(WithTable, book => book with { Items = With(book.Items, 2, one => one with { Count = 9 }) });

        Assert.IsType<BookRewrite.Whole>(rewrite);
        Assert.Contains("reed-mats", rewrite.Text);
        Assert.DoesNotContain("items_file", rewrite.Text);
    }
}
