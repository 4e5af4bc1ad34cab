using StormClock.Service.Books.Edits;

namespace StormClock.Service.Web.Garden;

/// <summary>What a page of the plot map is to show beside the drawing itself.</summary>
public sealed record PlotAsk
{
    /// <summary>Being placed; null for none.</summary>
    public PlotPick? Pick { get; init; }

    /// <summary>A press gives the second corner of an area.</summary>
    public bool Far { get; init; }

    /// <summary>It was placed just now.</summary>
    public bool Told { get; init; }

    public IReadOnlyList<string> Faults { get; init; } = [];

    /// <summary>Key of what to say where somebody else was quicker; null for nothing.</summary>
    public string? Conflict { get; init; }

    /// <summary>What was typed into fields that were not taken; null for what stands in the book.</summary>
    public IReadOnlyDictionary<string, string>? Typed { get; init; }

    /// <summary>Of a form that was not taken; null for that of the entry as it is.</summary>
    public EntryMark? Mark { get; init; }

    /// <summary>Typed as width of a sketch that was not taken.</summary>
    public string? Width { get; init; }

    public int Status { get; init; } = StatusCodes.Status200OK;
}
