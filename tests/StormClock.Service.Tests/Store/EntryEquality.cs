using System.Diagnostics.CodeAnalysis;
using StormClock.Service.Outbox;

namespace StormClock.Service.Tests.Store;

/// <summary>Entries are equal when everything in them is, the list of jobs by its contents.</summary>
internal sealed class EntryEquality : IEqualityComparer<OutboxEntry>
{
    private static readonly string[] None = [];

    public bool Equals(OutboxEntry? x, OutboxEntry? y) =>
        x is null || y is null ? x is null && y is null : x.JobIds.SequenceEqual(y.JobIds) && x with { JobIds = None } == y with { JobIds = None };

    public int GetHashCode([DisallowNull] OutboxEntry obj) => obj.Id.GetHashCode(StringComparison.Ordinal);
}
