using System.Security.Cryptography;
using System.Text;
using MimeKit;
using StormClock.Core.Reminders;
using StormClock.Service.Store;

namespace StormClock.Service.Delivery.Email;

/// <summary>
/// Stands in where no mail server is set up: writes each message as a file that any mail program opens. A second try
/// finds the file of the first and makes no other.
/// </summary>
/// <param name="folder">The data folder's <c>outgoing</c>; made when missing.</param>
public sealed class EmlChannel(string folder, EmailSender from) : IChannel
{
    private static readonly FormatOptions Wire = MakeWire();

    public string Name => Reach.Mail;

    public async Task<DeliveryOutcome> SendAsync(Outgoing message, CancellationToken cancellation)
    {
        var letter = MimeLetter.Build(message, from);
        if (letter.Value is null) return new DeliveryOutcome(DeliveryResult.Refused, letter.Faults[0].Reason);

        var name = FileName(message);
        try
        {
            Directory.CreateDirectory(folder);
            var path = Path.Combine(folder, name);
            if (!File.Exists(path)) await WriteAsync(letter.Value, path, cancellation);

            return new DeliveryOutcome(DeliveryResult.Delivered, $"written as {name}");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or OperationCanceledException)
        {
            return new DeliveryOutcome(DeliveryResult.TryAgain, fault.Message);
        }
    }

    /// <summary>Time and entry, e.g. <c>20270920T103000Z-3f9c.eml</c>; sorts by time.</summary>
    public static string FileName(Outgoing message) => $"{message.Dated:uuuuMMdd'T'HHmmss'Z'}-{Word(message.EntryId)}.eml";

    /// <summary>An id that could leave the folder or trouble a file system is named by its hash.</summary>
    private static string Word(string entryId) =>
        entryId.Length is > 0 and <= 100 && entryId.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_')
            ? entryId
            : Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(entryId)).AsSpan(0, 16));

    /// <summary>The file appears whole or not at all: written beside, forced to disk, then renamed.</summary>
    private static async Task WriteAsync(MimeMessage letter, string path, CancellationToken cancellation)
    {
        var unfinished = path + ".part";
        await using (var stream = new FileStream(unfinished, FileMode.Create, FileAccess.Write, FileShare.None))
        {
            await letter.WriteToAsync(Wire, stream, cancellation);
            stream.Flush(flushToDisk: true);
        }

        File.Move(unfinished, path, overwrite: true);
        FolderSync.Now(Path.GetDirectoryName(path)!);
    }

    private static FormatOptions MakeWire()
    {
        var options = FormatOptions.Default.Clone();
        options.NewLineFormat = NewLineFormat.Dos;
        return options;
    }
}
