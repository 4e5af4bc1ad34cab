namespace StormClock.Service.Books;

/// <summary>What a garden book writes, before it is text: what has changed of it can be found piece by piece.</summary>
internal abstract record Written;

/// <summary>A value that stands on one line: a number, a text in quotes, or a small list or mapping in brackets.</summary>
internal sealed record WrittenText(string Text) : Written;

/// <param name="Id">By which it is known again in a list; empty where it stands in none.</param>
/// <param name="Flow">On one line in braces; else a line a key.</param>
internal sealed record WrittenMap(string Id, IReadOnlyList<WrittenField> Fields, bool Flow) : Written
{
    public Written? this[string key] => Fields.FirstOrDefault(field => field.Key == key)?.Value;
}

/// <summary>A list with a dash before each entry.</summary>
internal sealed record WrittenList(IReadOnlyList<WrittenMap> Entries) : Written;

internal sealed record WrittenField(string Key, Written Value);
