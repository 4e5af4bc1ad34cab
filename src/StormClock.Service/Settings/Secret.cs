using StormClock.Core;

namespace StormClock.Service.Settings;

/// <summary>A password on its way to the server; printing it prints nothing of it.</summary>
public sealed class Secret(string value)
{
    public string Reveal() => value;

    public override string ToString() => "(hidden)";
}

/// <summary>Fetches the password of a mail server from where the settings say it is kept.</summary>
public static class MailPassword
{
    /// <returns>The secret; a fault that names the setting, never the value, when there is none to be had.</returns>
    /// <param name="variable">Reads an environment variable.</param>
    public static ReadResult<Secret> Find(MailSettings mail, Func<string, string?> variable) => Find("mail", mail.PasswordFile, mail.PasswordVariable, variable);

    /// <inheritdoc cref="Find(MailSettings, Func{string, string?})"/>
    public static ReadResult<Secret> Find(ReplySettings replies, Func<string, string?> variable) => Find("replies", replies.PasswordFile, replies.PasswordVariable, variable);

    private static ReadResult<Secret> Find(string group, string? file, string? name, Func<string, string?> variable)
    {
        if (name is not null)
            return variable(name) is { Length: > 0 } held ? new Secret(held) : new ReadFault($"{group}/password_env", $"the environment variable {name} is not set; set it for the service");
        if (file is null) return new ReadFault($"{group}/user", "no password is configured; add password_file or password_env");

        var text = Books.TextFile.Read(file);
        var first = text.Value?.Split('\n')[0].TrimEnd('\r');
        return string.IsNullOrEmpty(first) ? new ReadFault($"{group}/password_file", "cannot be read or is empty; its first line must be the password, readable by the service") : new Secret(first);
    }
}
