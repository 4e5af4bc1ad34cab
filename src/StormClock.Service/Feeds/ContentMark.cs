using System.Security.Cryptography;

namespace StormClock.Service.Feeds;

/// <summary>Tells one content from another.</summary>
internal static class ContentMark
{
    public static string Of(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes).AsSpan(0, 16));
}
