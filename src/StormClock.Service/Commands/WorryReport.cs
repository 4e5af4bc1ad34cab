using StormClock.Core.Garden;
using StormClock.Core.Loads;
using StormClock.Core.Worth;
using StormClock.Service.Books;
using StormClock.Service.Messages;
using StormClock.Service.Wording;

namespace StormClock.Service.Commands;

/// <summary>The book told back by the wind at which its things fail, and what is doubtful in it.</summary>
internal static class WorryReport
{
    public static IEnumerable<string> Of(GardenBook book, LocalDate today)
    {
        if (book.Items.Count > 0)
        {
            yield return "  what goes first (gust at 10 m in the open at which about half of such things fail; an order of worry, never a promise)";
            foreach (var worry in OrderOfWorry.Of(book)) yield return $"    {Line(book, worry)}";
        }

        var doubts = BookDoubts.Of(book, today);
        if (doubts.Count > 0) yield return "  doubtful";
        foreach (var same in doubts.GroupBy(doubt => doubt.Text)) yield return $"    {Told([.. same.Select(doubt => doubt.Subject).OfType<string>().Distinct()], same.Key)}";
    }

    private static string Line(GardenBook book, Worry worry)
    {
        var item = worry.Item;
        var gust = worry is { Gust10MMps: { } at, Mode: { } mode } ? $"{Amounts.Speed(at, Speech.English(book.Units)),8}  {Of(mode)}" : "       ?  nothing can be said";
        var jobs = item.Jobs.Count == 0 ? "no job" : string.Join("; ", item.Jobs.Select(job => Work(job, Speech.English(book.Units))));
        return $"{gust}: {Plain.Line(item.Name)}{(item.Count > 1 ? $" ({item.Count})" : "")}, {Plain.Line(worry.Area.Name)}. {Words.Capital(jobs)}{(item.Caution is { } caution ? $". Take care: {Plain.Line(caution)}" : "")}";
    }

    private static string Work(Job job, Speech speech)
    {
        var needs = job.Materials.Count == 0 ? "" : $", needs {string.Join(", ", job.Materials.Select(need => $"{Amounts.Of(need.Quantity, need.Unit, speech)} {Words.Token(need.Material, speech)}"))}";
        return $"{Words.Of(job.Kind, speech)} ({Tokens.Of(job.Class)} work, {(job.People == 1 ? "one person" : $"{job.People} people")}, {job.Minutes} min{(job.Typical ? ", typical" : "")}{needs})";
    }

    private static string Told(List<string> subjects, string text) => subjects.Count switch
    {
        0 => text,
        <= 6 => $"{string.Join(", ", subjects)}: {text}",
        _ => $"{string.Join(", ", subjects.Take(5))} and {subjects.Count - 5} more: {text}",
    };

    /// <summary>How a thing fails, as one says it after its name.</summary>
    private static string Of(FailureMode mode) => mode switch
    {
        FailureMode.Slides => "slides",
        FailureMode.Tips => "tips over",
        FailureMode.Lifts => "lifts off",
        FailureMode.Swings => "swings free",
        FailureMode.Leans => "leans with its posts",
        FailureMode.Breaks => "breaks",
        FailureMode.Uproots => "uproots",
        FailureMode.Lodges => "goes down flat",
        FailureMode.Tears => "tears",
        _ => throw new ArgumentOutOfRangeException(nameof(mode), mode, null),
    };
}
