namespace StormClock.Service.Pictures;

/// <summary>How a surface is filled. All can be told apart in grey: by pattern, or by light against dark.</summary>
internal enum Fill
{
    None,
    Paper,

    /// <summary>Pale: light enough for ground work only.</summary>
    Pale,

    /// <summary>Slanted lines: dark outside.</summary>
    Night,

    /// <summary>Crossed lines: no garden work.</summary>
    Closed,

    /// <summary>Dots: not known more closely.</summary>
    Perhaps,

    /// <summary>Solid and dark.</summary>
    Ink,
}

internal enum Anchor { Start, Middle, End }

/// <summary>A piece of a drawing. Lengths count from the upper left corner, to the right and down.</summary>
internal abstract record Mark;

/// <param name="Edge">With a thin line around it.</param>
internal sealed record Box(double X, double Y, double Width, double Height, Fill Fill, bool Edge = false) : Mark;

/// <param name="Edge">Width of the line around it; 0 for none.</param>
internal sealed record Polygon(IReadOnlyList<(double X, double Y)> Corners, Fill Fill, double Edge = 0) : Mark;

/// <summary>A photo, pale so that all upon it stays readable. On pages only: no sheet has one.</summary>
/// <param name="Address">From where the drawing is shown, or the data itself (RFC 2397).</param>
internal sealed record Photograph(double X, double Y, double Width, double Height, string Address) : Mark;

internal sealed record Stroke(double X1, double Y1, double X2, double Y2, double Width, bool Dashed = false) : Mark;

/// <param name="Y">Of the line on which the letters stand.</param>
/// <param name="OnInk">Written on a dark surface.</param>
internal sealed record Label(double X, double Y, string Text, double Size, bool Bold = false, Anchor Anchor = Anchor.Start, bool OnInk = false) : Mark;

/// <summary>A picture as values, from which SVG and paper are drawn alike.</summary>
internal sealed record Drawing(double Width, double Height, IReadOnlyList<Mark> Marks);
