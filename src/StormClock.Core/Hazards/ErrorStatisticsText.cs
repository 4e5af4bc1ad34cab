using System.Globalization;
using System.Text;

namespace StormClock.Core.Hazards;

/// <summary>
/// Error statistics as a text: a name and its numbers on each line, one number for each lead, or for each step between leads, or
/// a single one. Lines that begin with # say where the numbers come from.
/// </summary>
public static class ErrorStatisticsText
{
    /// <summary>A text that is part of this program.</summary>
    internal static string Embedded(string name)
    {
        using var stream = typeof(ErrorStatisticsText).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"{name} is not embedded.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <summary>Names and their numbers, without comments.</summary>
    internal static Dictionary<string, double[]> Rows(string text) => text
        .Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
        .Where(line => line[0] != '#')
        .Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        .ToDictionary(words => words[0], words => words[1..].Select(word => double.Parse(word, CultureInfo.InvariantCulture)).ToArray());

    /// <summary>Throws FormatException where a line is missing or has too few numbers: the texts are this program's own.</summary>
    public static ErrorStatistics Read(string text)
    {
        var rows = Rows(text);
        var leads = ErrorStatistics.LeadHours.Count;
        if (!Row("lead-h", leads).SequenceEqual(ErrorStatistics.LeadHours)) throw new FormatException("The leads are not those of this program.");
        return new(
            Row("along-sigma-nmi", leads), Row("along-bias-nmi", leads), Row("cross-sigma-nmi", leads), Row("wind-sigma-kt", leads),
            Row("wind-bias-kt", leads), Row("size-sigma", leads), Row("along-rho", leads - 1), Row("cross-rho", leads - 1),
            Row("wind-rho", leads - 1), Row("size-rho", leads - 1))
        {
            EvenSpeedKt = One("even-speed-kt"),
            UsualSpeedKt = One("usual-speed-kt"),
            SizeCalm = One("size-calm"),
            WindGrowth = One("wind-growth"),
            UsualWindKt = One("usual-wind-kt"),
            SizeBias = One("size-bias"),
            TrackScale = One("track-scale"),
            WindScale = One("wind-scale"),
            SizeScale = One("size-scale"),
        };

        double One(string name) => Row(name, 1)[0];

        double[] Row(string name, int count) => rows.TryGetValue(name, out var row) && row.Length == count
            ? row
            : throw new FormatException($"{name} needs {count} numbers.");
    }

    /// <summary>The text that <see cref="Read"/> understands, to four decimals.</summary>
    /// <param name="sources">Comment lines, without the #.</param>
    public static string Write(ErrorStatistics errors, IEnumerable<string> sources)
    {
        var text = new StringBuilder();
        foreach (var line in sources) text.Append("# ").Append(line).Append('\n');
        Row("lead-h", [.. ErrorStatistics.LeadHours]);
        Row("along-sigma-nmi", errors.AlongSigmaNmi);
        Row("along-bias-nmi", errors.AlongBiasNmi);
        Row("cross-sigma-nmi", errors.CrossSigmaNmi);
        Row("wind-sigma-kt", errors.WindSigmaKt);
        Row("wind-bias-kt", errors.WindBiasKt);
        Row("size-sigma", errors.SizeSigma);
        Row("along-rho", errors.AlongRho);
        Row("cross-rho", errors.CrossRho);
        Row("wind-rho", errors.WindRho);
        Row("size-rho", errors.SizeRho);
        Row("even-speed-kt", [errors.EvenSpeedKt ?? throw new ArgumentException("Without a speed at which time and place weigh the same.", nameof(errors))]);
        Row("usual-speed-kt", [errors.UsualSpeedKt]);
        Row("size-calm", [errors.SizeCalm]);
        Row("wind-growth", [errors.WindGrowth]);
        Row("usual-wind-kt", [errors.UsualWindKt]);
        Row("size-bias", [errors.SizeBias]);
        Row("track-scale", [errors.TrackScale]);
        Row("wind-scale", [errors.WindScale]);
        Row("size-scale", [errors.SizeScale]);
        return text.ToString();

        void Row(string name, IReadOnlyList<double> values) => text.Append(name).Append(' ')
            .AppendJoin(' ', values.Select(value => Math.Round(value, 4).ToString(CultureInfo.InvariantCulture))).Append('\n');
    }
}
