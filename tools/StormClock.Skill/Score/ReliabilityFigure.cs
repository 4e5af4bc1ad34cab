using System.Globalization;
using System.Text;

namespace StormClock.Skill.Score;

/// <summary>What was said against what came, for 34 kt by 120 h, one line for each set. Told apart by mark and dash, not by colour.</summary>
public static class ReliabilityFigure
{
    private const int Left = 70;
    private const int Top = 20;
    private const int Side = 400;
    private const int LeadHours = 120;

    /// <param name="tallies">Two at most: full line and discs, dashed line and squares.</param>
    public static string Svg(IReadOnlyList<SkillTally> tallies)
    {
        var svg = new StringBuilder();
        svg.AppendLine("""<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 500 490" role="img" aria-labelledby="title desc" font-family="sans-serif" font-size="13">""");
        svg.AppendLine($"""  <title id="title">Reliability: wind of 34 kt by {LeadHours} h</title>""");
        svg.AppendLine($"""  <desc id="desc">Across, the chance that was said; up, the share that came. On the thin diagonal both are equal; above it the wind came oftener than said. {Words(tallies)}</desc>""");
        svg.AppendLine("""  <rect width="500" height="490" fill="#fff"/>""");
        for (var percent = 0; percent <= 100; percent += 20)
        {
            svg.AppendLine(Text($"""  <path d="M{X(percent)} {Y(0)}V{Y(100)}M{X(0)} {Y(percent)}H{X(100)}" stroke="#ccc" fill="none"/>"""));
            svg.AppendLine(Text($"""  <text x="{X(percent)}" y="{Y(0) + 20}" text-anchor="middle">{percent}</text>"""));
            svg.AppendLine(Text($"""  <text x="{X(0) - 8}" y="{Y(percent) + 4}" text-anchor="end">{percent}</text>"""));
        }

        svg.AppendLine(Text($"""  <path d="M{X(0)} {Y(0)}L{X(100)} {Y(100)}" stroke="#777" fill="none"/>"""));
        for (var t = 0; t < tallies.Count; t++) svg.Append(Line(tallies[t], t));
        svg.AppendLine(Text($"""  <text x="{Left + Side / 2}" y="{Top + Side + 45}" text-anchor="middle">said, %</text>"""));
        svg.AppendLine(Text($"""  <text transform="translate(24 {Top + Side / 2}) rotate(-90)" text-anchor="middle">came, %</text>"""));
        return svg.AppendLine("</svg>").ToString();
    }

    private static string Line(SkillTally tally, int which)
    {
        var svg = new StringBuilder();
        var points = tally.Reliability(LeadHours).Select(bin => (X: X(100 * bin.Chance), Y: Y(100 * bin.Came))).ToArray();
        var dash = which == 0 ? "" : " stroke-dasharray=\"7 4\"";
        svg.AppendLine(Text($"""  <polyline points="{string.Join(' ', points.Select(p => Text($"{p.X:F1},{p.Y:F1}")))}" stroke="#000" stroke-width="2" fill="none"{dash}/>"""));
        foreach (var (x, y) in points) svg.AppendLine(Mark(which, x, y));

        var row = Top + 20 + 22 * which;
        svg.AppendLine(Text($"""  <path d="M{Left + 14} {row}h36" stroke="#000" stroke-width="2"{dash}/>"""));
        svg.AppendLine(Mark(which, Left + 32, row));
        svg.AppendLine(Text($"""  <text x="{Left + 58}" y="{row + 4}">set {tally.Set}, n = {tally.Count}</text>"""));
        return svg.ToString();
    }

    private static string Mark(int which, double x, double y) => which == 0
        ? Text($"""  <circle cx="{x:F1}" cy="{y:F1}" r="4"/>""")
        : Text($"""  <rect x="{x - 4:F1}" y="{y - 4:F1}" width="8" height="8" fill="#fff" stroke="#000" stroke-width="2"/>""");

    private static string Words(IEnumerable<SkillTally> tallies) => string.Join(" ", tallies.Select(tally =>
        $"Set {tally.Set}: " + string.Join(", ", tally.Reliability(LeadHours).Select(bin => Text($"{100 * bin.Chance:F0} said, {100 * bin.Came:F0} came"))) + "."));

    private static double X(double percent) => Left + Side * percent / 100;

    private static double Y(double percent) => Top + Side * (1 - percent / 100);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
