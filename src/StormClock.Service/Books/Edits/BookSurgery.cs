namespace StormClock.Service.Books.Edits;

/// <summary>
/// Finds the places in the text of a book where what is written of it has changed. It does not prove itself: whether the text
/// that comes of it says what is wanted, the reader decides. Layouts it does not know give null.
/// </summary>
internal sealed class BookSurgery
{
    private readonly TextEdits edits;
    private readonly bool fine;

    private BookSurgery(TextEdits edits, bool fine)
    {
        this.edits = edits;
        this.fine = fine;
    }

    /// <param name="fine">Touches only the keys that changed; else an entry with a change is written anew as a whole.</param>
    /// <param name="was">What the book read from the text writes.</param>
    public static TextEdits? Cut(string text, YamlMap top, WrittenMap was, WrittenMap wanted, bool fine)
    {
        var edits = new TextEdits(text);
        return !top.Flow && new BookSurgery(edits, fine).Fields(top, was, wanted, isTop: true) ? edits : null;
    }

    private bool Fields(YamlMap found, WrittenMap was, WrittenMap wanted, bool isTop = false)
    {
        var keys = was.Fields.Concat(wanted.Fields).Select(field => field.Key).Distinct().Where(key => !WrittenForm.Same(was[key], wanted[key])).ToList();
        return keys.TrueForAll(key => (found.Entries.FirstOrDefault(entry => entry.Key == key), wanted[key]) switch
        {
            (null, null) => true,
            (null, { } value) => Added(found, was[key], new WrittenField(key, value), wanted, isTop),
            ({ } entry, null) => Removed(found, entry),
            ({ } entry, { } value) => Value(found, entry, was[key], value),
        });
    }

    private bool Value(YamlMap found, YamlEntry entry, Written? was, Written wanted) => (entry.Value, was, wanted) switch
    {
        (YamlMap map, WrittenMap before, WrittenMap after) when fine => Fields(map, before, after),
        (YamlList { Flow: true, Entries.Count: 0 }, WrittenList known, WrittenList now) => New(known, now, inText: 0) is { } added && (added.Count == 0 || Replaced(found, entry, new WrittenList(added))),
        (YamlList list, WrittenList known, WrittenList now) when !list.Flow || known.Entries.Select(one => one.Id).SequenceEqual(now.Entries.Select(one => one.Id)) => Entries(list, known, now) ?? Replaced(found, entry, new WrittenList([])),
        _ => Replaced(found, entry, wanted),
    };

    private bool Replaced(YamlMap found, YamlEntry entry, Written wanted)
    {
        var span = entry.Value.Span;
        var lines = entry.Value is YamlMap { Flow: false } or YamlList { Flow: false } || wanted is WrittenList;
        if (found.Flow || !lines) edits.Replace(span.Start, span.End, WrittenForm.OneLine(wanted));
        else if (edits.BehindColon(entry.KeySpan.End) is { } colon) edits.Replace(colon, span.End, WrittenForm.Behind(wanted, ColumnOf(found), edits.Newline));
        else return false;

        return true;
    }

    /// <returns>Null where nothing of the list would be left.</returns>
    private bool? Entries(YamlList found, WrittenList was, WrittenList wanted)
    {
        if (found.Entries.Count > was.Entries.Count || New(was, wanted, found.Entries.Count) is not { } added) return false;

        var pairs = found.Entries.Zip(was.Entries, (node, entry) => (Node: node, Was: entry, Wanted: wanted.Entries.FirstOrDefault(other => other.Id == entry.Id))).ToList();
        if (added.Count == 0 && pairs.TrueForAll(pair => pair.Wanted is null)) return null;
        if (!pairs.TrueForAll(pair => pair.Wanted is null ? Removed(pair.Node) : WrittenForm.Same(pair.Was, pair.Wanted) || Entry(pair.Node, pair.Was, pair.Wanted, found.Flow))) return false;
        if (added.Count == 0) return true;

        // After the changes inside of the last entry, some of which may belong below the same line.
        if (DashColumn(found.Entries[^1]) is not { } dash) return false;
        foreach (var entry in added) edits.AddBelow(found.Span.End, new string(' ', dash) + WrittenForm.Dashed(entry, dash, edits.Newline));
        return true;
    }

    /// <summary>The entries to be added; null where one has changed that is not among the first ones, which the text holds: it stands in a table.</summary>
    private static List<WrittenMap>? New(WrittenList was, WrittenList wanted, int inText)
    {
        var elsewhere = was.Entries.Skip(inText).ToList();
        return elsewhere.TrueForAll(entry => WrittenForm.Same(entry, wanted.Entries.FirstOrDefault(other => other.Id == entry.Id)))
            ? [.. wanted.Entries.Where(entry => !was.Entries.Any(other => other.Id == entry.Id))]
            : null;
    }

    private bool Entry(YamlNode found, WrittenMap was, WrittenMap wanted, bool inFlow)
    {
        if (found is not YamlMap map) return false;
        if (fine) return Fields(map, was, wanted);

        edits.Replace(map.Span.Start, map.Span.End, WrittenForm.Entry(wanted with { Flow = inFlow || wanted.Flow }, ColumnOf(map), edits.Newline));
        return true;
    }

    private bool Removed(YamlNode entry)
    {
        if (DashColumn(entry) is null) return false;

        edits.RemoveLines(entry.Span.Start, entry.Span.End);
        return true;
    }

    private bool Removed(YamlMap from, YamlEntry entry)
    {
        if (!from.Flow && edits.Before(entry.KeySpan.Start).IsWhiteSpace())
        {
            edits.RemoveLines(entry.KeySpan.Start, entry.Value.Span.End);
            return true;
        }

        // The first key stands behind a brace or dash, and the comma before it belongs to no other.
        var at = from.Entries.ToList().IndexOf(entry);
        if (!from.Flow || at <= 0) return false;

        edits.Replace(from.Entries[at - 1].Value.Span.End, entry.Value.Span.End, "");
        return true;
    }

    /// <summary>Behind the last key before it, in the order of the writer, that stays.</summary>
    private bool Added(YamlMap to, Written? was, WrittenField field, WrittenMap wanted, bool isTop)
    {
        if (field.Value is WrittenList list && was is WrittenList known)
        {
            if (New(known, list, inText: 0) is not { } added) return false;
            if (added.Count == 0) return true;

            field = field with { Value = new WrittenList(added) };
        }

        var before = wanted.Fields.Select(other => other.Key).TakeWhile(key => key != field.Key)
            .Select(key => to.Entries.FirstOrDefault(entry => entry.Key == key)).LastOrDefault(entry => entry is not null)
            ?? to.Entries.LastOrDefault(entry => wanted[entry.Key] is not null);
        if (before is null) return false;

        var (column, end) = (ColumnOf(to), before.Value.Span.End);
        var gap = isTop && edits.HasGapAbove(before.KeySpan.Start) ? edits.Newline : "";
        if (to.Flow) edits.Replace(end, end, $", {field.Key}: {WrittenForm.OneLine(field.Value)}");
        else edits.AddBelow(end, gap + new string(' ', column) + WrittenForm.Field(field, column, edits.Newline));
        return true;
    }

    private int ColumnOf(YamlNode node) => edits.Before(node.Span.Start).Length;

    /// <summary>The column of the dash before an entry; null where something else stands in that line, or the dash in another.</summary>
    private int? DashColumn(YamlNode entry)
    {
        var before = edits.Before(entry.Span.Start).TrimEnd(' ');
        return before.Length > 0 && before[^1] == '-' && before[..^1].IsWhiteSpace() ? before.Length - 1 : null;
    }
}
