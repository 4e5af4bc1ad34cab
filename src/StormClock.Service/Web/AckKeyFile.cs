using System.Security.Cryptography;
using StormClock.Core;
using StormClock.Core.Acknowledgements;
using StormClock.Service.Store;

namespace StormClock.Service.Web;

/// <summary>
/// The link keys on disk: one a line, <c>id secret-in-base64</c>, newest first. To change keys put a new line on top and
/// keep the old one until its links have run out.
/// </summary>
public static class AckKeyFile
{
    /// <summary>In the data folder.</summary>
    public const string Name = "link-keys";

    /// <summary>Reads the keys, making the file with a first key when there is none; readable by its owner only.</summary>
    public static ReadResult<AckKeyRing> ReadOrMake(string path)
    {
        if (!File.Exists(path)) Make(path);

        var keys = new List<AckKey>();
        var faults = new List<ReadFault>();
        foreach (var (at, line) in File.ReadLines(path).Index().Where(line => line.Item.Length > 0))
        {
            if (Parse(line) is { } key) keys.Add(key);
            else faults.Add(ReadFault.At(at + 1, $"write a key as: id, a blank, and {AckKey.SecretLength} or more random bytes in base64."));
        }

        if (keys.Count == 0) faults.Add(new ReadFault(path, "holds no key: delete it, then a new one is made and older links stop working."));
        return faults.Count == 0 ? new AckKeyRing(keys) : ReadResult.Bad<AckKeyRing>(faults);
    }

    private static AckKey? Parse(string line)
    {
        var parts = line.Split(' ');
        var secret = new byte[line.Length];
        return parts is [{ Length: > 0 } id, var text]
            && Convert.TryFromBase64String(text, secret, out var length)
            && length >= AckKey.SecretLength
            ? new AckKey(id, secret.AsMemory(0, length))
            : null;
    }

    private static void Make(string path) => SecretFile.Write(
        path, System.Text.Encoding.ASCII.GetBytes($"k1 {Convert.ToBase64String(RandomNumberGenerator.GetBytes(AckKey.SecretLength))}\n"));
}
