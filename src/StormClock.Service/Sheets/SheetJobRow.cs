using System.Globalization;
using StormClock.Service.Pictures;

namespace StormClock.Service.Sheets;

/// <summary>One job across the page: a box to tick, number, title, start, start by, minutes, people; under it what else to know.</summary>
internal sealed class SheetJobRow(SheetType type, double room)
{
    private const double Size = 8.2;
    private const double SmallSize = 7.4;
    private const double TitleX = 32;
    private const double Space = 6;

    private double PeopleX => room - 84;

    private double MinutesX => PeopleX - 42;

    private double StartByX => MinutesX - 92;

    private double StartX => StartByX - 84;

    public Piece Of(SheetJob job)
    {
        (IReadOnlyList<Mark> Marks, double Depth)[] cells =
        [
            Cell(job.Title, TitleX, StartX, bold: true),
            Cell($"Start {job.Start}", StartX, StartByX),
            Cell($"by {job.StartBy}", StartByX, MinutesX, bold: true),
            Cell(job.Minutes, MinutesX, PeopleX),
            Cell(job.People, PeopleX, room + Space),
        ];
        List<Mark> marks =
        [
            new Box(1, 2.5, 9, 9, Fill.Paper, Edge: true),
            new Label(27, 2 + Size, job.Number.ToString(CultureInfo.InvariantCulture), Size, Bold: true, Anchor: Anchor.End),
            .. cells.SelectMany(cell => cell.Marks),
        ];
        var depth = 2 + cells.Max(cell => cell.Depth);
        foreach (var detail in job.Details)
        {
            var (lines, deep) = type.Set(detail, TitleX, depth, room - TitleX, SmallSize);
            marks.AddRange(lines);
            depth += deep;
        }

        depth = Math.Max(depth, 13) + 1.5;
        marks.Add(new Stroke(0, depth, room, depth, 0.3));
        return new(marks, depth + 0.5);
    }

    private (IReadOnlyList<Mark> Marks, double Depth) Cell(string text, double from, double to, bool bold = false) =>
        type.Set(text, from, 2, to - from - Space, Size, bold);
}
