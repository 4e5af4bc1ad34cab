using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace StormClock.Core.Acknowledgements;

/// <summary>Names a list of jobs in one short word, so that a link for "all of these" means these and no others.</summary>
public static class AckList
{
    /// <summary>Half a SHA-256 is ample to tell lists apart; the token's signature is what cannot be forged.</summary>
    private const int HashLength = 16;

    /// <summary>The same jobs in any order give the same name.</summary>
    public static string Hash(IEnumerable<string> jobTokens)
    {
        // No token holds a line break: ids are letters, digits, hyphens and a slash.
        var sorted = string.Join('\n', jobTokens.Order(StringComparer.Ordinal));
        return Base64Url.EncodeToString(SHA256.HashData(Encoding.UTF8.GetBytes(sorted)).AsSpan(..HashLength));
    }
}
