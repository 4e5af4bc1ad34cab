namespace StormClock.Core.Advisories;

/// <summary>Anything that a forecaster, an authority or the gardener has said about the hazard, with the time it was said.</summary>
public abstract record Advisory
{
    /// <summary>Identity within all sources: the same message read twice has the same id, e.g. <c>AL092022/16/2022-09-27T03:00Z</c>.</summary>
    public abstract string Id { get; }

    /// <summary>When its author issued it.</summary>
    public abstract Instant Issued { get; }

    /// <summary>What a person would call the source, e.g. <c>Ian advisory 16</c>.</summary>
    public abstract string Title { get; }
}
