using System.Text;
using StormClock.Core;
using StormClock.Service.Store;

namespace StormClock.Service.Settings;

/// <summary>Writes the mail settings into a settings file that has none. What stands in the file stays; the password goes into a file of its own.</summary>
internal static class MailSection
{
    /// <summary>Of the data folder: the password of a server that was set on the pages. No backup carries it.</summary>
    public const string PasswordFile = "mail-password";

    /// <param name="passwordFile">Where the password is kept; null where the server asks for none.</param>
    /// <returns>The settings as they will be read; the faults, and an untouched file, otherwise.</returns>
    public static ReadResult<StormSettings> Add(string settingsFile, string host, int port, MailSecurity security, string? user, string? passwordFile, string from)
    {
        var before = File.Exists(settingsFile) ? File.ReadAllText(settingsFile) : "";
        if (SettingsFile.Load(settingsFile).Value is { Mail: not null }) return ReadFault.At(1, "mail is set in stormclock.yaml already; change it there");

        var section = new StringBuilder("mail:\n")
            .Append("  host: ").Append(Text(host)).Append('\n')
            .Append("  port: ").Append(port).Append('\n')
            .Append("  security: ").Append(security == MailSecurity.Tls ? "tls" : "starttls").Append('\n');
        if (user is not null) section.Append("  user: ").Append(Text(user)).Append("\n  password_file: ").Append(Text(passwordFile!)).Append('\n');
        section.Append("  from: ").Append(Text(from)).Append("\n  from_name: StormClock\n");

        var text = before.Length == 0 || before.EndsWith('\n') ? before + section : $"{before}\n{section}";
        var fresh = settingsFile + ".new";
        File.WriteAllText(fresh, text);
        var read = SettingsFile.Load(fresh);
        if (read.IsGood)
        {
            File.Move(fresh, settingsFile, overwrite: true);
            FolderSync.Now(Path.GetDirectoryName(Path.GetFullPath(settingsFile))!);
        }
        else
        {
            File.Delete(fresh);
        }

        return read;
    }

    /// <summary>Always in quotes, so that no text can be taken for anything else.</summary>
    private static string Text(string text) => $"\"{text.ReplaceLineEndings(" ").Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";
}
