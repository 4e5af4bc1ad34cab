using StormClock.Core;
using StormClock.Service.Books;

namespace StormClock.Service.Settings;

/// <summary>The settings as they lie on disk.</summary>
public static class SettingsFile
{
    /// <summary>A missing file is no fault: the defaults hold.</summary>
    public static ReadResult<StormSettings> Load(string path)
    {
        if (!Path.Exists(path)) return StormSettings.Defaults;

        var text = TextFile.Read(path);
        return text.Value is { } found ? SettingsReader.Read(found) : ReadResult.Bad<StormSettings>(text.Faults);
    }
}
