namespace StormClock.Core.Acknowledgements;

/// <summary>The keys of an installation, newest first: the first signs, all of them open.</summary>
public sealed record AckKeyRing
{
    public AckKeyRing(IReadOnlyList<AckKey> keys) =>
        Keys = keys.Count > 0 ? keys : throw new ArgumentException("There must be a key to sign with.", nameof(keys));

    public IReadOnlyList<AckKey> Keys { get; }

    public AckKey Newest => Keys[0];
}
