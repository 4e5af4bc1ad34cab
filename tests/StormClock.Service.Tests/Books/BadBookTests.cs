using StormClock.Service.Books;

namespace StormClock.Service.Tests.Books;

public class BadBookTests
{
    /// <summary>
    /// One fault each: the text to replace in the good book, what to put there, the beginning of the line that must be
    /// named, and words that the reason must hold.
    /// </summary>
    public static TheoryData<string, string, string, string[]> OneFault => new()
    {
        // keys
        { "    count: 3", "    coutn: 3", "coutn", ["unknown key 'coutn'", "item 'fig-pots'", "did you mean 'count'?"] },
        { "lift_kg: 14", "colour: red", "colour", ["unknown key 'colour'", "known here: id, name"] },
        { "    count: 3\n", "", "id: fig-pots", ["item 'fig-pots' has no 'count'", "add count: 3"] },
        { "{kind: pick, minutes: 35}", "{kind: pick}", "{kind: pick}", ["job of item 'bean-rows' 'pick' has no 'minutes'"] },
        { "    count: 3\n", "    count: 3\n    count: 4\n", "count: 4", ["'count' is written twice", "first in line 28"] },
        { "email: ines@example.org", "email:", "email:", ["'email' of person 'ines' has no value"] },
        { "zone: America/New_York, ", "", "garden:", ["has no 'zone'"] },

        // types
        { "    count: 3", "    count: three", "count: three", ["'count' of item 'fig-pots'", "whole number", "'three'"] },
        { "    count: 3", "    count: 2.5", "count: 2.5", ["whole number", "'2.5'"] },
        { "    count: 3", "    count: [3]", "count: [3]", ["must be a single value"] },
        { "ladder_alone: true", "ladder_alone: yes", "{id: otto", ["true or false", "'yes'"] },
        { "days_off: [2027-09-24]", "days_off: [24.9.2027]", "days_off", ["a date such as 2027-09-22", "'24.9.2027'"] },
        { "from: \"7:30\"", "from: half past seven", "{date:", ["time of day", "'half past seven'"] },
        { "    jobs:\n      - {kind: pick, minutes: 35}", "    jobs:\n      - pick\n      - {kind: pick, minutes: 35}", "pick", ["must hold keys with values"] },
        { "endangers: [neighbour_window]", "endangers: {who: me}", "endangers", ["must be a list of words"] },
        { "id: fig-pots", "id: Fig Pots", "id: Fig Pots", ["lower-case letters, digits and hyphens", "'Fig Pots'"] },

        // units
        { "mass: 40 lb", "mass: 40 stone", "mass", ["unknown unit 'stone'", "kg, g, lb"] },
        { "mass: 40 lb", "mass: heavy", "mass", ["a mass with its unit", "'heavy'"] },
        { "sustained: 18 mph", "sustained: 18", "ladder:", ["a wind speed with its unit", "20 mph"] },
        { "sustained: 18 mph", "sustained: 18 mph gust", "ladder:", ["'gust' does not belong"] },
        { "gust: 24 mph gust", "gust: 24 lb", "ladder:", ["unknown unit 'lb'", "mph"] },
        { "unit: ft", "unit: fathom", "{material: rope, quantity: 100", ["'fathom'", "not known"] },
        { "quantity: 8, unit: m", "quantity: 8, unit: each", "{material: rope, quantity: 8", ["counts it in each", "line 21 counts it in m"] },
        { "quantity: 8, unit: m", "quantity: 8 ft, unit: m", "{material: rope, quantity: 8", ["given twice"] },
        { "quantity: 8, unit: m", "quantity: 8 fathom", "{material: rope, quantity: 8", ["'fathom'", "not known"] },
        { "quantity: 8, unit: m", "quantity: -8, unit: m", "{material: rope, quantity: -8", ["from 0 to 1000000", "'-8'"] },
        { "quantity: 8, unit: m", "quantity: some, unit: m", "{material: rope, quantity: some", ["with a unit or without", "'some'"] },

        // absurd numbers
        { "latitude: 30.1", "latitude: 91", "{id: home", ["from -90 to 90", "'91'"] },
        { "longitude: -84.2", "longitude: 840.2", "{id: home", ["from -180 to 180", "'840.2'"] },
        { "latitude: 30.1, longitude: -84.2", "latitude: 0, longitude: 0", "{id: home", ["both 0, a place in the sea"] },
        { "minutes: 35", "minutes: 0", "{kind: pick", ["from 1 to 1440", "'0'"] },
        { "mass: 40 lb", "mass: -4 kg", "mass", ["between 0 and 20000 kg", "'-4 kg'"] },
        { "latitude: 30.1", "latitude: NaN", "{id: home", ["must be a number", "'NaN'"] },
        { "latitude: 30.1", "latitude: 1e400", "{id: home", ["must be a number", "'1e400'"] },
        { "sustained: 18 mph", "sustained: 60 mph", "ladder:", ["must lie between", "17.49 m/s"] },
        { "gust: 24 mph gust", "gust: 12 mph", "ladder:", ["gust limit below the sustained one"] },
        { "to: \"19:00\"", "to: \"16:00\"", "{days:", ["later than 'from'"] },

        // choices
        { "exposure: sheltered", "exposure: shelterd", "{id: porch", ["did you mean 'sheltered'?"] },
        { "kind: potted_tree", "kind: poted_tree", "kind: poted_tree", ["did you mean 'potted_tree'?"] },
        { "kind: potted_tree", "kind: plant_pot", "kind: plant_pot", ["did you mean 'potted_plant' or 'potted_tree'?"] },
        { "kind: potted_tree", "kind: glass house", "kind: glass house", ["did you mean 'hoop_house' or 'glass_light'?"] },
        { "kind: pick", "kind: pik", "{kind: pik", ["did you mean 'pick'?"] },
        { "{kind: bundle, minutes: 10}", "{kind: untie, minutes: 10}", "{kind: untie", ["done after the storm", "'undo'"] },
        { "units: us", "units: imperial", "garden:", ["'imperial'", "known here: us, metric, metric-knots"] },
        { "America/New_York", "America/New_Yrok", "garden:", ["no time zone", "did you mean 'America/New_York'?"] },
        { "days: [mon, tue]", "days: [mon, tues]", "{days:", ["'tues'", "mon, tue, wed"] },
        { "date: 2027-09-22, ", "date: 2027-09-22, days: [wed], ", "{date:", ["either days", "or one date"] },
        { "date: 2027-09-22, ", "", "{from:", ["either days", "or one date"] },
        { "email: ines@example.org", "email: ines at home", "email", ["one plain address", "'ines at home'"] },

        { "email: ines@example.org", "email: ines@example.org\n    second: ines at work", "second", ["one plain address", "'ines at work'"] },
        { "email: ines@example.org", "email: ines@example.org\n    second: ines@example.org", "second", ["same as email"] },
        { "email: ines@example.org", "second: ines@example.org", "second", ["there is no first"] },

        // references
        { "    area: porch", "    area: poch", "area: poch", ["the area 'poch'", "did you mean 'porch'?"] },
        { "{id: rows, name: Rows, site: field}", "{id: rows, name: Rows, site: meadow}", "{id: rows", ["the site 'meadow'", "known here: home, field"] },
        { "store: {id: shed,", "store: {id: garage,", "store:", ["the store 'garage'", "known here: shed"] },
        { "[bean-rows/pick]", "[bean-rows/pikc]", "{kind: bundle, minutes: 50", ["the job 'bean-rows/pikc'", "did you mean 'bean-rows/pick'?"] },
        { "travel_minutes: {field: 9}", "travel_minutes: {field: 9, lot: 3}", "{id: home", ["the site 'lot'"] },
        { ", travel_minutes: {field: 9}", "", "{id: field", ["no travel time between the sites 'field' and 'home'"] },

        // twice, circles, hands
        { "id: otto", "id: ines", "{id: ines", ["used twice", "person in line 3"] },
        { "  - id: bean-rows\n    kind: tall_crop\n    area: rows\n    count: 40\n", "  - id: fig-pots\n    kind: tall_crop\n    area: rows\n    count: 40\n    mass: 1\n", "", ["used twice"] },
        { "{kind: pick, minutes: 35}", "{kind: pick, minutes: 35, after: [bundle]}", "{kind: pick", ["makes a circle", "bean-rows/pick after bean-rows/bundle after bean-rows/pick"] },
        { "{kind: pick, minutes: 35}", "{kind: pick, minutes: 35, after: [pick]}", "{kind: pick", ["makes a circle"] },
        { "  - {id: otto, name: Otto, ladder_alone: true}\n", "", "people: 2", ["needs 2 people", "lists 1 who can work"] },
        { "  - {id: otto, name: Otto, ladder_alone: true}\n", "  - {id: otto, name: Otto, role: keeper}\n", "people: 2", ["needs 2 people", "lists 1 who can work"] },

        // YAML itself
        { "    count: 3", "\tcount: 3", "\tcount", ["a tab is used for indentation"] },
        { "    count: 3", "    count: &three 3", "count: &three", ["anchor '&three'"] },
        { "    count: 3", "    count: !!int 3", "count: !!int", ["tag"] },
        { "endangers: [neighbour_window]", "endangers: [neighbour_window", "endangers", ["broken YAML"] },
    };

    [Theory]
    [MemberData(nameof(OneFault))]
    public void Read_OneFault_NamesLineAndMend(string good, string bad, string lineBegins, string[] words)
    {
        Assert.Contains(good, SampleBook.Good);
        var text = ReplaceFirst(SampleBook.Good, good, bad);
        var read = GardenReader.Read(text, "quay.yaml", null, MadeKinds.Bare);

        Assert.False(read.IsGood);
        var fault = lineBegins.Length > 0 ? Assert.Single(read.Faults) : read.Faults[0];
        if (lineBegins.Length > 0) Assert.Equal(SampleBook.LineOf(text, lineBegins), fault.Line);
        Assert.Equal($"line {fault.Line}", fault.Where);
        Assert.All(words, word => Assert.Contains(word, fault.Reason));
    }

    [Fact]
    public void Read_LadderWorkForOne_NeedsSomebodyWhoMayUseALadderAlone()
    {
        var text = SampleBook.Good.Replace("{kind: pick, minutes: 35}", "{kind: pick, minutes: 35, class: ladder}");
        Assert.True(GardenReader.Read(text, "quay.yaml").IsGood);

        var fault = Assert.Single(GardenReader.Read(text.Replace("ladder_alone: true", "ladder_alone: false"), "quay.yaml").Faults);

        Assert.Equal(SampleBook.LineOf(text, "{kind: pick"), fault.Line);
        Assert.Contains("nobody in the book may use a ladder alone", fault.Reason);
    }

    [Fact]
    public void Read_ManyFaults_TellsAllInOrderOfLines()
    {
        const string text = """
            garden: {id: quay, name: Quay, zone: Mars/Olympus, units: us}
            people:
              - {id: ines, name: Ines, rol: gardener}
            sites:
              - {id: home, name: Home, latitude: 91, longitude: west}
            areas:
              - {id: porch, name: Porch, site: hom}
            item: []
            items:
              - id: fig-pots
                kind: potted_tree
                area: porsch
                count: 0
                mass: 40 stone
                jobs:
                  - {kind: tie, minutes: 0, after: [move]}
                  - {kind: move, minutes: 10, people: 2, after: [tie]}
                  - {kind: glue, minutes: 10}
              - id: fig-pots
                kind: potted_tree
                area: porch
            """;

        var faults = GardenReader.Read(text, "quay.yaml").Faults;

        Assert.Equal([1, 3, 5, 5, 7, 8, 12, 13, 14, 16, 16, 17, 18, 19, 19], faults.Select(fault => fault.Line));
        string[] words =
        [
            "no time zone", "'rol'", "'91'", "'west'", "the site 'hom'", "unknown key 'item'", "the area 'porsch'", "'count'", "'stone'",
            "'minutes'", "circle", "needs 2 people", "'glue'", "no 'count'", "used twice",
        ];
        Assert.All(words, word => Assert.Contains(faults, fault => fault.Reason.Contains(word)));
    }

    public static TheoryData<string, string> NoBook => new()
    {
        { "", "the file is empty" },
        { "\n\n# only a remark\n", "the file is empty" },
        { "---\n", "the file is empty" },
        { "<!DOCTYPE html>\n<html><body>Not found</body></html>", "HTML or XML, not YAML" },
        { "<?xml version=\"1.0\"?><alert/>", "HTML or XML, not YAML" },
        { "%PDF-1.4\u0000\u0001\u0002", "binary file" },
        { "\uFFFDELF", "binary file" },
        { "just some words", "keys with values" },
        { "- a\n- b", "keys with values" },
        { "garden: {id: a}\n---\ngarden: {id: b}", "a second document" },
        { "a: b: c", "broken YAML" },
        { "? [a, b]\n: c", "a key must be one plain word" },
    };

    [Theory]
    [MemberData(nameof(NoBook))]
    public void Read_NoBookAtAll_SaysWhatItIs(string text, string words) =>
        Assert.Contains(GardenReader.Read(text, "quay.yaml").Faults, fault => fault.Reason.Contains(words));

    [Fact]
    public void Read_AliasBomb_IsRefusedWithoutBeingUnfolded()
    {
        var text = "a: &a [x, x, x, x, x, x, x, x, x]\n" + string.Concat("bcdefghi".Select(c => $"{c}: &{c} [{string.Join(", ", Enumerable.Repeat($"*{(char)(c - 1)}", 9))}]\n"));

        var faults = GardenReader.Read(text, "bomb.yaml").Faults;

        Assert.Contains(faults, fault => fault.Line == 1 && fault.Reason.Contains("the anchor '&a'"));
        Assert.Contains(faults, fault => fault.Line == 2 && fault.Reason.Contains("the alias '*a'"));
    }

    public static TheoryData<string, string> TooMuch => new()
    {
        { "garden: " + new string('[', 200_000), "nested more than" },
        { string.Concat(Enumerable.Repeat("- ", 200_000)), "nested more than" },
        { "garden: " + new string('x', 1_000_001), "more than 1000000" },
        { "garden:\n" + string.Concat(Enumerable.Range(0, 60_000).Select(i => $"  k{i}: 1\n")), "more faults from here on" },
        { SampleBook.Good + "\n" + string.Concat(Enumerable.Range(0, 9_000).Select(i => $"  - {{id: i{i}, kind: bed, area: porch, count: 1}}\n")), "'items' of the garden book has 9002 entries" },
        { SampleBook.Good + "\n" + string.Concat(Enumerable.Range(0, 1_500).Select(i => $"  - {{id: i{i}, kind: bed, area: porch, count: 1, jobs: [{{kind: tie, minutes: 1, after: [i{i + 1}/tie]}}, {{kind: soak, minutes: 1}}]}}\n")), "the book has 3005 jobs" },
        { SampleBook.Good.Replace("areas:", string.Concat(Enumerable.Range(0, 1_900).Select(i => $"  - {{id: s{i}, name: S, latitude: 1, longitude: 1}}\n")) + "areas:"), "on 1902 sites" },
    };

    [Theory]
    [MemberData(nameof(TooMuch))]
    public void Read_RunawayFile_IsRefusedWithItsReason(string text, string words) =>
        Assert.Contains(GardenReader.Read(text, "big.yaml", null, MadeKinds.Bare).Faults, fault => fault.Reason.Contains(words));

    private static string ReplaceFirst(string text, string old, string with)
    {
        var at = text.IndexOf(old, StringComparison.Ordinal);
        return text[..at] + with + text[(at + old.Length)..];
    }
}
