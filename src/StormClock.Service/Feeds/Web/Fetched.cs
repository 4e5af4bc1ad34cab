namespace StormClock.Service.Feeds.Web;

/// <summary>How an address answered.</summary>
public enum FetchState
{
    Good,

    /// <summary>Nothing has changed since the answer whose marks were sent along.</summary>
    Unchanged,

    /// <summary>The server says that there is nothing (any more) at this address.</summary>
    Gone,

    Failed,
}

/// <summary>What a server gave to know its answer again.</summary>
public sealed record Validators(string? ETag, string? LastModified)
{
    public bool Any => ETag is not null || LastModified is not null;
}

/// <summary>The outcome of asking one address; trouble is a value.</summary>
public sealed record Fetched(FetchState State)
{
    public ReadOnlyMemory<byte> Body { get; init; }

    public Validators? Validators { get; init; }

    /// <summary>Why there is no good answer, in words for the keeper.</summary>
    public string? Trouble { get; init; }

    /// <summary>The server asks to be left alone until then.</summary>
    public Instant? NotBefore { get; init; }

    /// <summary>Another try may help.</summary>
    public bool IsPassing { get; init; }

    /// <summary>The fault is the server's, not the request's; enough of them and the host is left alone.</summary>
    public bool IsHostFault { get; init; }

    public static Fetched Fails(string trouble, bool passing = false) => new(FetchState.Failed) { Trouble = trouble, IsPassing = passing };
}
