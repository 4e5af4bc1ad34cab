namespace StormClock.Service.Pictures;

/// <summary>Under the wide time line: what the surfaces mean, and the jobs that are numbers only.</summary>
internal sealed class WideKey(PictureModel model, double width, double top)
{
    private const double Size = WideLayout.Size;
    private const double Row = WideLayout.Row;
    private const double Margin = WideLayout.Margin;

    private readonly List<Mark> marks = [];
    private double y = top;

    /// <param name="named">Jobs whose title stands in their bar.</param>
    /// <returns>The marks and where they end.</returns>
    public static (IReadOnlyList<Mark> Marks, double Foot) Of(PictureModel model, double width, double top, IReadOnlySet<int> named)
    {
        var key = new WideKey(model, width, top);
        key.Surfaces(PictureKey.Of(model));
        key.Chance();
        key.Legend(named);
        return (key.marks, key.y);
    }

    /// <summary>Without the chance and the list.</summary>
    public static (IReadOnlyList<Mark> Marks, double Foot) Brief(PictureModel model, double width, double top)
    {
        var key = new WideKey(model, width, top);
        key.Surfaces(PictureKey.Of(model).Where(surface => surface.Fill != Fill.Perhaps));
        return (key.marks, key.y);
    }

    private void Surfaces(IEnumerable<(Fill Fill, string Words)> surfaces)
    {
        var x = Margin;
        foreach (var (fill, words) in surfaces)
        {
            var wide = 26 + Lettering.Width(words, Size);
            if (x > Margin && x + wide > width - Margin)
            {
                x = Margin;
                y += Row + 4;
            }

            marks.Add(new Box(x, y, 20, Row, fill, Edge: true));
            marks.Add(new Label(x + 26, y + 10, words, Size));
            x += wide + 14;
        }

        y += Row + 8;
    }

    private void Chance()
    {
        if (model.Chance.Count == 0) return;
        marks.Add(new Label(Margin, y + 6, model.Speech.Say("picture.wide.chance.key"), Size));
        y += Row + 4;
    }

    private void Legend(IReadOnlySet<int> named)
    {
        var jobs = model.Jobs.Where(job => !named.Contains(job.Number)).ToList();
        var columns = Math.Max(1, (int)(width / 420));
        var room = (width - Margin) / columns;
        var deep = (jobs.Count + columns - 1) / columns;
        for (var at = 0; at < jobs.Count; at++)
        {
            var text = Lettering.Cut($"{jobs[at].Number}  {jobs[at].Title}", Size, room - Margin);
            marks.Add(new Label(Margin + at / deep * room, y + Row * (at % deep + 1), text, Size));
        }

        y += Row * deep;
    }
}
