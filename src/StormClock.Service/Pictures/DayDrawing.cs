using StormClock.Core.Garden;

namespace StormClock.Service.Pictures;

/// <summary>The parts of a day that look the same whichever way time runs: light and chance.</summary>
internal sealed class DayDrawing(PictureModel model, LocalDate date, DayScale scale, Frame frame)
{
    /// <summary>Light and dark under a lane, and where no garden work goes on.</summary>
    public IEnumerable<Mark> Ground(double across, double breadth)
    {
        yield return frame.Box(0, across, scale.Length, breadth, Fill.Night);
        foreach (var light in model.Light(date, WorkClass.Ground)) yield return Band(light, Fill.Pale);
        foreach (var light in model.Light(date, WorkClass.Carry)) yield return Band(light, Fill.Paper);
        if (ClosedFrom is { } closed)
        {
            yield return Band((closed, 24), Fill.Paper);
            yield return Band((closed, 24), Fill.Closed);
        }

        yield return frame.Box(0, across, scale.Length, breadth, Fill.None, edge: true);

        Box Band((double From, double To) hours, Fill fill) =>
            frame.Box(At(hours.From), across, At(hours.To) - At(hours.From), breadth, fill);
    }

    /// <summary>
    /// The chance that ground work has stopped, given that the wind comes: solid as far as it is at least so, dots as far as it may be.
    /// </summary>
    public IEnumerable<Mark> Chance(double across, double breadth)
    {
        var points = model.Chance;
        yield return frame.Box(0, across, scale.Length, breadth, Fill.Paper);
        if (points.Count > 0)
        {
            if (Stretch(null, points[0], 0, 0.1) is { } before) yield return Area(before, Fill.Perhaps, 0, share => share);
            for (var at = 1; at < points.Count; at++)
            {
                if (Stretch(points[at - 1], points[at], points[at - 1].Share, points[at].Share) is { } rise) yield return Area(rise, Fill.Ink, 0, share => share);
            }

            if (Stretch(points[^1], null, points[^1].Share, points[^1].Share) is { } after)
            {
                yield return Area(after, Fill.Ink, 0, share => share);
                yield return Area(after, Fill.Perhaps, after.To.Share, _ => 1);
            }
        }

        yield return frame.Box(0, across, scale.Length, breadth, Fill.None, edge: true);

        Polygon Area(((double Hour, double Share) From, (double Hour, double Share) To) part, Fill fill, double floor, Func<double, double> top) => new(
            [
                frame.Point(At(part.From.Hour), across, breadth, floor), frame.Point(At(part.From.Hour), across, breadth, top(part.From.Share)),
                frame.Point(At(part.To.Hour), across, breadth, top(part.To.Share)), frame.Point(At(part.To.Hour), across, breadth, floor),
            ],
            fill);
    }

    /// <summary>What the parts of the strip mean, each with the hours that it takes today.</summary>
    public IEnumerable<(double From, double To, string Words)> ChanceWords()
    {
        var points = model.Chance;
        for (var at = 0; at <= points.Count; at++)
        {
            var begin = at == 0 ? null : points[at - 1];
            var end = at == points.Count ? null : points[at];
            if (Stretch(begin, end, 0, 0) is { } part) yield return (part.From.Hour, part.To.Hour, Between(begin, end));
        }
    }

    public double At(double hours) => scale.At(hours);

    private string Between(ChancePoint? begin, ChancePoint? end) => (begin, end) switch
    {
        (null, { } first) => model.Speech.Say("picture.under", ("share", Percent(first))),
        ({ } last, null) => model.Speech.Say("picture.over", ("share", Percent(last))),
        _ => model.Speech.Say("picture.between", ("from", Percent(begin!)), ("to", Percent(end!))),
    };

    private static string Percent(ChancePoint point) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Math.Round(point.Share * 100)} %");

    private double? ClosedFrom
    {
        get
        {
            var stop = model.Ground?.Earliest;
            if (model.Subject.LeaveBy is { } leave && !(stop < leave)) stop = leave;
            return stop is { } at && model.Hours(at, date) is < 24 and var hours ? hours : null;
        }
    }

    /// <summary>The part of this day between two points of the curve, with the shares at its ends; null when none of it is today.</summary>
    private ((double Hour, double Share) From, (double Hour, double Share) To)? Stretch(ChancePoint? begin, ChancePoint? end, double first, double last)
    {
        var from = begin is null ? 0 : model.Hours(begin.At, date);
        var to = end is null ? 24 : model.Hours(end.At, date);
        if (to <= from) return null;

        var midnight = date.AtStartOfDayInZone(model.Zone).ToInstant();
        return ((from, ShareAt(midnight + Duration.FromHours(from))), (to, ShareAt(midnight + Duration.FromHours(to))));

        double ShareAt(Instant at) => begin is null || end is null
            ? last
            : first + (last - first) * Math.Clamp((at - begin.At) / (end.At - begin.At), 0, 1);
    }
}
