using System.Security.Cryptography;
using StormClock.Core;
using StormClock.Service.Store;

namespace StormClock.Service.Delivery.Push;

/// <summary>The installation's push key on disk: PKCS #8 in PEM, made once, for its owner only.</summary>
public static class VapidKeyFile
{
    /// <summary>In the data folder.</summary>
    public const string Name = "push-keys";

    /// <summary>Reads the key, making the file when there is none. A file that others could read is closed to them.</summary>
    public static ReadResult<VapidKeys> ReadOrMake(string path)
    {
        if (!File.Exists(path)) Make(path);

        SecretFile.Close(path);
        var key = ECDsa.Create();
        try
        {
            key.ImportFromPem(File.ReadAllText(path));
            if (key.KeySize == 256) return new VapidKeys(key);
        }
        catch (Exception odd) when (odd is ArgumentException or CryptographicException)
        {
        }

        key.Dispose();
        return new ReadFault(path, "holds no P-256 key in PEM: restore it, or delete it; then a new one is made and every device must be subscribed again.");
    }

    private static void Make(string path)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        SecretFile.Write(path, System.Text.Encoding.ASCII.GetBytes(key.ExportPkcs8PrivateKeyPem() + "\n"));
    }
}
