using System.Globalization;
using StormClock.Service.Messages;

namespace StormClock.Service.Pictures;

/// <summary>Time runs to the right, a block for each day: words of its lines, the chance, a lane for each person.</summary>
internal sealed class WideLayout(PictureModel model, double width)
{
    internal const double Size = 11;
    internal const double Row = 13;
    private const double Gutter = 104;
    internal const double Margin = 8;
    private const double Strip = 26;
    private const double BarBreadth = 17;

    private readonly List<Mark> marks = [];

    /// <summary>What stands before the lines of a day: its bars and their numbers.</summary>
    private readonly List<Mark> front = [];
    private readonly DayScale scale = new([.. Enumerable.Repeat((width - Gutter - Margin) / 24, 24)]);
    private readonly HashSet<int> named = [];
    private double y;

    public Drawing Draw()
    {
        Days(brief: false);
        var (key, foot) = WideKey.Of(model, width, y, named);
        return new(width, foot + Margin, [.. marks, .. key]);
    }

    /// <summary>Beside a list that names the jobs by number and the stop times by class: without these, the chance, and idle lanes.</summary>
    public Drawing DrawBrief()
    {
        Days(brief: true);
        var (key, foot) = WideKey.Brief(model, width, y);
        return new(width, foot, [.. marks, .. key]);
    }

    private void Days(bool brief)
    {
        Hours();
        foreach (var date in model.Days.Where(date => !brief || date <= model.LastWorkDay)) Day(date, brief);
    }

    private void Hours()
    {
        for (var hour = 0; hour <= 24; hour += 3)
        {
            marks.Add(new Label(Gutter + scale.At(hour), Row, Dates.Hour(hour, model.Speech), Size, Anchor: hour == 24 ? Anchor.End : Anchor.Middle));
        }

        y = Row + 2;
    }

    private void Day(LocalDate date, bool brief)
    {
        var drawing = new DayDrawing(model, date, scale, new(false, Gutter));
        var lines = Heading(date);
        if (model.Chance.Count > 0 && !brief)
        {
            marks.Add(new Label(Margin, y + 17, model.Speech.Say("picture.wide.chance"), Size));
            marks.AddRange(drawing.Chance(y, Strip));
            Grid(Strip);
            foreach (var (from, to, words) in drawing.ChanceWords()) Phase(Gutter + scale.At(from), Gutter + scale.At(to), words);
            y += Strip;
        }

        List<int> lanes = [.. Enumerable.Range(0, model.Lanes.Count).Where(lane => !brief || model.On(date, lane).Any())];
        if (lanes.Count == 0)
        {
            marks.Add(new Label(Margin, y + 12, model.Speech.Say("picture.wide.light"), Size));
            marks.AddRange(drawing.Ground(y, BarBreadth));
            Grid(BarBreadth);
            y += BarBreadth;
        }

        foreach (var lane in lanes) Lane(drawing, date, lane);
        foreach (var (at, head, line, _) in lines) marks.Add(new Stroke(at, head, at, y, line.Width, line.Dashed));
        marks.AddRange(front);
        front.Clear();
        foreach (var (_, _, _, words) in lines) marks.AddRange(words);
        y += 9;
    }

    /// <summary>The day's name, and room for the words of its lines in as many rows as keep them apart.</summary>
    /// <returns>Where each line stands and begins, with its words, which cover the lines behind them.</returns>
    private List<(double At, double Head, Line Line, IReadOnlyList<Mark> Words)> Heading(LocalDate date)
    {
        var rows = new Rows();
        var heads = new List<(double, double, Line, IReadOnlyList<Mark>)>();
        foreach (var line in model.Lines.Where(line => model.IsOn(line.At, date)))
        {
            var at = Gutter + scale.At(model.Hours(line.At, date));
            var wide = Lettering.Width(line.Words, Size);
            var left = at + 3 + wide > width - Margin;
            var row = rows.Place(left ? at - 3 - wide : at, left ? at : at + 3 + wide);
            var foot = y + Row * (row + 1);
            heads.Add((at, foot - Row + 4, line,
            [
                new Box(left ? at - 4 - wide : at + 2, foot - Row + 3, wide + 2, Row, Fill.Paper),
                new Label(left ? at - 3 : at + 3, foot, line.Words, Size, line.Width > 2, left ? Anchor.End : Anchor.Start),
            ]));
        }

        marks.Add(new Label(Margin, y + Row, model.DayName(date), Size + 1, Bold: true));
        y += Row * Math.Max(1, rows.Count) + 4;
        return heads;
    }

    /// <summary>What a part of the chance strip says, at its beginning where it does not cover the curve.</summary>
    private void Phase(double from, double to, string words)
    {
        var wide = Lettering.Width(words, Size);
        if (from + wide + 8 > to) return;
        marks.Add(new Box(from + 3, y + 2, wide + 2, Row - 1, Fill.Paper));
        marks.Add(new Label(from + 4, y + 11, words, Size));
    }

    private void Lane(DayDrawing drawing, LocalDate date, int lane)
    {
        var rows = new Rows();
        var above = new List<(int Row, double Middle, string Number)>();
        var bars = model.On(date, lane).Select(entry => (entry.Bar, From: drawing.At(entry.From), To: drawing.At(entry.To))).ToList();
        foreach (var (bar, from, to) in bars)
        {
            var number = bar.Number.ToString(CultureInfo.InvariantCulture);
            var half = Lettering.Width(number, Size) / 2;
            var middle = (from + to) / 2;
            if (to - from < 2 * half + 1) above.Add((rows.Place(middle - half - 1, middle + half + 1), middle, number));
        }

        var head = rows.Count * Row;
        marks.AddRange(drawing.Ground(y, head + BarBreadth + 3));
        Grid(head + BarBreadth + 3);
        marks.Add(new Label(Margin, y + head + 13, Lettering.Cut(model.Lanes[lane], Size, Gutter - Margin - 4), Size));
        foreach (var (row, middle, number) in above)
        {
            var foot = y + head - row * Row - 2;
            if (row > 0) front.Add(new Stroke(Gutter + middle, foot + 1, Gutter + middle, y + head + 1, 0.6));
            var half = Lettering.Width(number, Size) / 2;
            front.Add(new Box(Gutter + middle - half, foot - Size + 2, 2 * half, Size, Fill.Paper));
            front.Add(new Label(Gutter + middle, foot, number, Size, Anchor: Anchor.Middle));
        }

        foreach (var (bar, from, to) in bars)
        {
            front.Add(new Box(Gutter + from, y + head + 1.5, to - from, BarBreadth, Fill.Ink, Edge: true));
            if (Inside(bar, to - from) is { } text) front.Add(new Label(Gutter + (from + to) / 2, y + head + 13, text, Size, Anchor: Anchor.Middle, OnInk: true));
        }

        y += head + BarBreadth + 3;
    }

    /// <summary>Hours to count by, behind what is drawn on them.</summary>
    private void Grid(double breadth)
    {
        for (var hour = 3; hour < 24; hour += 3) marks.Add(new Stroke(Gutter + scale.At(hour), y, Gutter + scale.At(hour), y + breadth, 0.3));
    }

    /// <summary>Number and title where there is room, else the number, else nothing: then it stands above.</summary>
    private string? Inside(Bar bar, double room)
    {
        var whole = $"{bar.Number} {bar.Title}";
        var number = bar.Number.ToString(CultureInfo.InvariantCulture);
        if (Lettering.Width(whole, Size) + 4 > room) return Lettering.Width(number, Size) + 1 > room ? null : number;
        named.Add(bar.Number);
        return whole;
    }
}
