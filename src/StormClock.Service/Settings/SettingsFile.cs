using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Service.Books;

namespace StormClock.Service.Settings;

/// <summary>The settings as they lie on disk.</summary>
public static class SettingsFile
{
    /// <summary>With the presets among the feeds unfolded; their faults are faults of the settings.</summary>
    /// <param name="presetsFolder">Where the preset files lie.</param>
    public static ReadResult<StormSettings> Load(string path, string presetsFolder, IReadOnlyList<GardenBook> gardens)
    {
        var read = Load(path);
        if (read.Value is not { } settings) return read;
        var feeds = FeedPresets.Expand(settings.Feeds, presetsFolder, gardens);
        return feeds.Value is { } unfolded ? settings with { Feeds = unfolded } : ReadResult.Bad<StormSettings>(feeds.Faults);
    }

    /// <summary>A missing file is no fault: the defaults hold.</summary>
    public static ReadResult<StormSettings> Load(string path)
    {
        if (!Path.Exists(path)) return StormSettings.Defaults;

        var text = TextFile.Read(path);
        return text.Value is { } found ? SettingsReader.Read(found) : ReadResult.Bad<StormSettings>(text.Faults);
    }
}
