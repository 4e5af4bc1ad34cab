using System.Globalization;
using StormClock.Service.Messages;

namespace StormClock.Service.Pictures;

/// <summary>
/// Time runs down, for a phone: hours, words of the lines, the chance, a lane for each person. Hours without work are drawn
/// shorter.
/// </summary>
internal sealed class NarrowLayout(PictureModel model, double width)
{
    private const double Size = 11;
    private const double Row = 12;
    private const double Margin = 4;
    private const double HoursBreadth = 36;
    private const double Strip = 22;
    private const double IdleHour = 4;
    private const double BusyHour = 44;
    private const double LongestHour = 132;
    private const double NumberBreadth = 22;

    private readonly List<Mark> marks = [];

    /// <summary>What stands before the lines of a day: its bars and their words.</summary>
    private readonly List<Mark> front = [];
    private readonly HashSet<int> named = [];
    private readonly double strip = model.Chance.Count > 0 ? Strip : 0;
    private readonly double words = Margin + model.Lines.Max(line => Lettering.Width(line.Short, Size));
    private double y;

    private double LanesFrom => HoursBreadth + words + Margin + strip;

    private double LaneBreadth => (width - Margin - LanesFrom) / Math.Max(1, model.Lanes.Count);

    public Drawing Draw()
    {
        foreach (var date in model.Days) Day(date);
        Key();
        Legend();
        return new(width, y + Margin, marks);
    }

    private void Day(LocalDate date)
    {
        marks.Add(new Label(Margin, y + Row + 2, model.DayName(date), Size + 1, Bold: true));
        y += Row + 4;
        if (strip > 0) marks.Add(new Label(LanesFrom - strip, y + Row - 2, "%", Size));
        for (var lane = 0; lane < model.Lanes.Count; lane++)
        {
            marks.Add(new Label(LanesFrom + lane * LaneBreadth + 2, y + Row - 2, Lettering.Cut(model.Lanes[lane], Size, LaneBreadth - 4), Size, Bold: true));
        }

        y += Row + 2;
        var scale = new DayScale([.. Enumerable.Range(0, 24).Select(hour => HourLength(date, hour))]);
        var drawing = new DayDrawing(model, date, scale, new(true, y));
        if (strip > 0) marks.AddRange(drawing.Chance(LanesFrom - strip, strip));
        if (model.Lanes.Count == 0) marks.AddRange(drawing.Ground(LanesFrom, LaneBreadth));
        for (var lane = 0; lane < model.Lanes.Count; lane++) Lane(drawing, date, lane);
        Hours(scale);
        Words(drawing, date);
        marks.AddRange(front);
        front.Clear();
        y += scale.Length + Row;
    }

    /// <summary>Long enough for the words of the shortest job that touches the hour, within reason.</summary>
    private double HourLength(LocalDate date, int hour)
    {
        var shortest = Enumerable.Range(0, Math.Max(1, model.Lanes.Count))
            .SelectMany(lane => model.On(date, lane))
            .Where(entry => entry.From < hour + 1 && entry.To > hour)
            .Select(entry => (entry.To - entry.From) as double?)
            .Min();
        if (shortest is { } hours) return Math.Clamp((Row + 1) / hours, BusyHour, LongestHour);
        var lines = model.Lines.Count(line => model.IsOn(line.At, date) && (int)model.Hours(line.At, date) == hour);
        return Math.Max(IdleHour, lines * Row);
    }

    private void Lane(DayDrawing drawing, LocalDate date, int lane)
    {
        var across = LanesFrom + lane * LaneBreadth;
        marks.AddRange(drawing.Ground(across, LaneBreadth));
        var lowest = double.NegativeInfinity;
        foreach (var (bar, from, to) in model.On(date, lane))
        {
            var (top, deep) = (drawing.At(from), drawing.At(to) - drawing.At(from));
            var number = bar.Number.ToString(CultureInfo.InvariantCulture);
            var breadth = Math.Max(2, LaneBreadth - NumberBreadth - 2);
            var lines = Lettering.Width(number, Size) > breadth - 4 ? 0 : (int)(deep / Row);
            front.Add(new Box(across + 1, y + top, breadth, deep, Fill.Ink, Edge: true));
            if (lines == 0)
            {
                lowest = Math.Max(y + top + deep / 2 + 4, lowest + Size - 1);
                front.Add(new Label(across + LaneBreadth - 2, lowest, number, Size, Anchor: Anchor.End));
                continue;
            }

            var whole = $"{number} {bar.Title}";
            var text = Lettering.Wrap(whole, Size, breadth - 4, lines);
            if (string.Join(' ', text) == whole) named.Add(bar.Number);
            for (var line = 0; line < text.Count; line++) front.Add(new Label(across + 4, y + top + Row * (line + 1) - 2, text[line], Size, OnInk: true));
        }
    }

    private void Hours(DayScale scale)
    {
        var last = double.NegativeInfinity;
        for (var hour = 0; hour < 24; hour++)
        {
            var at = y + scale.At(hour);
            if (at - last < Row) continue;
            last = at;
            marks.Add(new Label(Margin, at + 4, Dates.Hour(hour, model.Speech), Size));
            marks.Add(new Stroke(HoursBreadth, at, width - Margin, at, 0.3));
        }
    }

    private void Words(DayDrawing drawing, LocalDate date)
    {
        var today = model.Lines.Where(line => model.IsOn(line.At, date)).ToList();
        foreach (var line in today) marks.Add(new Stroke(HoursBreadth, At(line), width - Margin, At(line), line.Width, line.Dashed));
        var last = double.NegativeInfinity;
        foreach (var line in today)
        {
            last = Math.Max(last + Row, At(line) - 2);
            marks.Add(new Label(HoursBreadth + 2, last, line.Short, Size, line.Width > 2));
        }

        double At(Line line) => y + drawing.At(model.Hours(line.At, date));
    }

    private void Key()
    {
        IEnumerable<string> keys = model.Ground?.Earliest is null ? ["picture.narrow.idle"] :
            ["picture.narrow.idle", "picture.narrow.lines", "picture.narrow.likely"];
        foreach (var text in keys.Select(key => model.Speech.Say(key))) marks.Add(new Label(Margin, (y += Row + 2) - 2, Lettering.Cut(text, Size, width - 2 * Margin), Size));
        if (strip > 0) marks.Add(new Label(Margin, (y += Row + 2) - 2, model.Speech.Say("picture.narrow.chance"), Size));
        foreach (var (fill, text) in PictureKey.Of(model))
        {
            marks.Add(new Box(Margin, y + 2, 20, Row - 1, fill, Edge: true));
            marks.Add(new Label(Margin + 26, (y += Row + 2) - 2, text, Size));
        }

        y += 6;
    }

    private void Legend()
    {
        foreach (var job in model.Jobs.Where(job => !named.Contains(job.Number)))
        {
            foreach (var text in Lettering.Wrap($"{job.Number}  {job.Title}", Size, width - 2 * Margin, 3))
            {
                marks.Add(new Label(Margin, (y += Row + 1) - 2, text, Size));
            }
        }
    }
}
