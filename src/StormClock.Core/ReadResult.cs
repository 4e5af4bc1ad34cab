namespace StormClock.Core;

/// <summary>One thing wrong in something read: where it stands, what is wrong, and how to mend it.</summary>
/// <param name="Where">Line, element or column as a person would look for it, e.g. <c>line 12</c> or <c>alert/info/area</c>.</param>
/// <param name="Reason">What is wrong and, where known, the mend; one sentence.</param>
/// <param name="Line">1-based line in the text read, 0 when the format has none.</param>
public sealed record ReadFault(string Where, string Reason, int Line = 0)
{
    /// <summary>Name of the file it stands in, where that is one named by the text read; null for the text read itself.</summary>
    public string? File { get; init; }

    public static ReadFault At(int line, string reason) => new($"line {line}", reason, line);

    public override string ToString() => $"{Where}: {Reason}";
}

/// <summary>
/// Outcome of reading something written elsewhere: a value, or every fault found. Bad input is expected, so it is a
/// value and never an exception.
/// </summary>
public sealed class ReadResult<T>
    where T : class
{
    private ReadResult(T? value, IReadOnlyList<ReadFault> faults)
    {
        Value = value;
        Faults = faults;
    }

    /// <summary>The value read; null exactly when there are faults.</summary>
    public T? Value { get; }

    public IReadOnlyList<ReadFault> Faults { get; }

    public bool IsGood => Value is not null;

    public static implicit operator ReadResult<T>(T value) => new(value, []);

    public static implicit operator ReadResult<T>(ReadFault fault) => new(null, [fault]);

    internal static ReadResult<T> Of(T? value, IReadOnlyList<ReadFault> faults) => new(value, faults);
}

/// <summary>Makers for results whose value is an interface or whose faults are many.</summary>
public static class ReadResult
{
    public static ReadResult<T> Good<T>(T value)
        where T : class => ReadResult<T>.Of(value, []);

    public static ReadResult<T> Bad<T>(IReadOnlyList<ReadFault> faults)
        where T : class =>
        faults.Count > 0 ? ReadResult<T>.Of(null, faults) : throw new ArgumentException("A bad result needs a fault.", nameof(faults));
}
