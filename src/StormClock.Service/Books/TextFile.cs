using System.Text;
using StormClock.Core;

namespace StormClock.Service.Books;

/// <summary>Reads a whole text file; what cannot be had or is no text comes back as a fault.</summary>
internal static class TextFile
{
    private const long MostBytes = 4_000_000;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    public static ReadResult<string> Read(string path)
    {
        try
        {
            var file = new FileInfo(path);
            if (file.Exists && file.Length > MostBytes) return ReadFault.At(1, $"the file has {file.Length} bytes, far too many for a file of this kind");

            return Decode(File.ReadAllBytes(path));
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return ReadFault.At(1, Told(path));
        }
    }

    private static string Told(string path)
    {
        if (Directory.Exists(path)) return "cannot be read: this is a folder; name a file";
        return File.Exists(path) ? "cannot be read; check that this user may read it and that no other program holds it" : "cannot be read: there is no such file";
    }

    private static ReadResult<string> Decode(byte[] bytes)
    {
        try
        {
            return Strict.GetString(bytes);
        }
        catch (DecoderFallbackException odd)
        {
            var line = bytes.AsSpan(0, Math.Clamp(odd.Index, 0, bytes.Length)).Count((byte)'\n') + 1;
            return ReadFault.At(line, "this is not UTF-8 text; save the file as plain text in UTF-8");
        }
    }
}
