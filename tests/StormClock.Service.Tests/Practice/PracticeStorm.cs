using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using NodaTime.Text;
using StormClock.Core.Formats;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Feeds;

namespace StormClock.Service.Tests.Practice;

/// <summary>The practice storm and the garden that it comes over, in their own time or in another.</summary>
internal static partial class PracticeStorm
{
    private static readonly InstantPattern Header = InstantPattern.Create("HHmm 'UTC' ddd MMM dd uuuu", CultureInfo.InvariantCulture);
    private static readonly OffsetDateTimePattern Written = OffsetDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:sso<+HH:mm>");

    private static readonly Lazy<GardenBook> TernHook = new(() =>
        GardenReader.Read(File.ReadAllText(Path.Combine(ConfigFiles.Folder, "practice", "garden-tern-hook.yaml")), "tern-hook").Value!);

    private static readonly Lazy<IReadOnlyList<(Instant Issued, RawMessage Message)>> OwnTime = new(() => MovedBy(Duration.Zero));

    public static GardenBook Garden => TernHook.Value;

    /// <summary>In the order of their issue.</summary>
    public static IReadOnlyList<(Instant Issued, RawMessage Message)> Messages => OwnTime.Value;

    /// <summary>Every time in every message later by as much.</summary>
    /// <param name="by">Whole hours.</param>
    public static IReadOnlyList<(Instant Issued, RawMessage Message)> MovedBy(Duration by) =>
    [
        .. Directory.GetFiles(Path.Combine(ConfigFiles.Folder, "practice", "storm")).Where(file => Path.GetExtension(file) is ".txt" or ".xml")
            .Select(file => new RawMessage(file, by == Duration.Zero ? File.ReadAllBytes(file) : Encoding.UTF8.GetBytes(Moved(File.ReadAllText(file), by))))
            .Select(raw => (MessageReader.Read(raw.Bytes).Value!.Issued, raw))
            .OrderBy(message => message.Issued),
    ];

    private static string Moved(string text, Duration by)
    {
        if (text.StartsWith('<')) return WrittenTime().Replace(text, time => Written.Format((Written.Parse(time.Value).Value + by).WithOffset(Offset.Zero)));

        var header = HeaderTime().Match(text).Value;
        var issued = Header.Parse(Capitalised(header)).Value;
        var moved = DayAndHour().Replace(text, time => Moved(time, issued, by));
        return moved.Replace(header, Header.Format(issued + by).ToUpperInvariant(), StringComparison.Ordinal).Replace("2027\n", $"{(issued + by).InUtc().Year}\n", StringComparison.Ordinal);
    }

    /// <summary>A day of the month within a fortnight of the issue, such as <c>21/0600Z</c>.</summary>
    private static string Moved(Match time, Instant issued, Duration by)
    {
        var day = int.Parse(time.Groups[1].ValueSpan, CultureInfo.InvariantCulture);
        var date = Enumerable.Range(-3, 14).Select(days => issued.InUtc().Date.PlusDays(days)).First(date => date.Day == day);
        var at = (date + LocalTimePattern.CreateWithInvariantCulture("HHmm").Parse(time.Groups[2].Value).Value).InUtc().ToInstant() + by;
        return at.InUtc().ToString("dd'/'HHmm'Z'", CultureInfo.InvariantCulture);
    }

    /// <summary><c>0900 UTC Sun Sep 19 2027</c>.</summary>
    private static string Capitalised(string header) => string.Join(' ', header.Split(' ').Select(word => word is "UTC" || !char.IsLetter(word[0]) ? word : $"{word[0]}{word[1..].ToLowerInvariant()}"));

    [GeneratedRegex(@"\b\d{4} UTC [A-Z]{3} [A-Z]{3} \d\d \d{4}\b")]
    private static partial Regex HeaderTime();

    [GeneratedRegex(@"\b(\d\d)/(\d{4})Z")]
    private static partial Regex DayAndHour();

    [GeneratedRegex(@"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[+-]\d\d:\d\d")]
    private static partial Regex WrittenTime();
}
