using StormClock.Core.Hazards;

namespace StormClock.Skill.Refit;

/// <summary>Error statistics from how forecasts came out, for any choice of the four parameters of form.</summary>
/// <param name="EvenSpeedKt">See <see cref="ErrorStatistics.EvenSpeedKt"/>.</param>
public sealed record StatisticsFit(double? EvenSpeedKt, double UsualSpeedKt, double SizeCalm, double WindGrowth, double UsualWindKt)
{
    // Errors of the maximum reach beyond this lead are too few; size is assumed to go on slowly (C).
    private const double LastSizeLead = 72;
    private const double AssumedSizeStep = 0.01;

    // Forecast since 2020 only, so of other seasons than its neighbours: taken between them.
    private const double LeadBetween = 60;

    private static readonly double[] MeasuredLeads = [.. ErrorStatistics.LeadHours.Where(lead => lead != LeadBetween)];

    /// <summary>The form whose spreads make the errors most likely, as if normal; each parameter by itself on a grid.</summary>
    public static StatisticsFit Likeliest(IReadOnlyCollection<ForecastError> errors)
    {
        var usual = new StatisticsFit(null, Math.Round(errors.Average(e => e.SpeedKt)), 0, 0, Math.Round(errors.Average(e => e.ForecastKt)));
        var even = Enumerable.Range(6, 35).Select(kt => (double)kt).MinBy(kt => (usual with { EvenSpeedKt = kt }).AlongSurprise(errors));
        var calm = Enumerable.Range(0, 21).Select(step => step / 10.0).MinBy(power => (usual with { SizeCalm = power }).SizeSurprise(errors));
        var growth = Enumerable.Range(0, 10).Select(step => step / 10.0).MinBy(share => (usual with { WindGrowth = share }).WindSurprise(errors));
        return usual with { EvenSpeedKt = even, SizeCalm = calm, WindGrowth = growth };
    }

    /// <summary>Tables by lead; the scales of use stay those of the type.</summary>
    public ErrorStatistics Statistics(IReadOnlyCollection<ForecastError> all)
    {
        var form = Form();
        var errors = all.Where(e => MeasuredLeads.Contains(e.LeadHours)).ToArray();
        var byLead = MeasuredLeads.ToDictionary(lead => lead, lead => errors.Where(e => e.LeadHours == lead).ToArray());
        var alongBias = MeasuredLeads.ToDictionary(lead => lead, lead => AlongBias(byLead[lead]));
        var windBias = MeasuredLeads.ToDictionary(lead => lead, lead => byLead[lead].Average(e => e.WindKt));
        double Along(ForecastError e) => (e.AlongNmi - alongBias[e.LeadHours] * form.AlongBiasFactor(e.SpeedKt)) / form.AlongFactor(e.SpeedKt);
        double Cross(ForecastError e) => e.CrossNmi;
        double Strength(ForecastError e) => (e.WindKt - windBias[e.LeadHours]) / form.WindFactor(e.ForecastKt);
        var sizes = errors.Where(e => e.LnSize is not null && e.LeadHours <= LastSizeLead).ToArray();
        var sizeMean = MeasuredLeads.Where(lead => lead <= LastSizeLead).ToDictionary(lead => lead, lead => sizes.Where(e => e.LeadHours == lead).Average(e => e.LnSize!.Value));
        double Size(ForecastError e) => (e.LnSize!.Value - sizeMean[e.LeadHours]) / form.SizeFactor(e.ForecastKt);

        return form with
        {
            AlongSigmaNmi = Leads(lead => Rms(byLead[lead].Select(Along))),
            AlongBiasNmi = Leads(lead => alongBias[lead]),
            CrossSigmaNmi = Leads(lead => Rms(byLead[lead].Select(Cross))),
            WindSigmaKt = Leads(lead => Rms(byLead[lead].Select(Strength))),
            WindBiasKt = Leads(lead => windBias[lead]),
            SizeSigma = Leads(lead => Rms(sizes.Where(e => e.LeadHours == Math.Min(lead, LastSizeLead)).Select(Size)) + Math.Max(0, lead - LastSizeLead) / 24 * AssumedSizeStep),
            SizeBias = sizes.Where(e => e.LeadHours <= 48).Average(e => e.LnSize!.Value),
            AlongRho = Rhos(errors, Along),
            CrossRho = Rhos(errors, Cross),
            WindRho = Rhos(errors, Strength),
            SizeRho = [.. Rhos(sizes, Size)[..^2], 0.7, 0.7],
        };
    }

    private ErrorStatistics Form() => ErrorStatistics.None with
    {
        EvenSpeedKt = EvenSpeedKt, UsualSpeedKt = UsualSpeedKt, SizeCalm = SizeCalm, WindGrowth = WindGrowth, UsualWindKt = UsualWindKt,
    };

    private double AlongBias(IReadOnlyCollection<ForecastError> errors)
    {
        var form = Form();
        double Weight(ForecastError e) => form.AlongBiasFactor(e.SpeedKt) / Square(form.AlongFactor(e.SpeedKt));
        return errors.Sum(e => e.AlongNmi * Weight(e)) / errors.Sum(e => form.AlongBiasFactor(e.SpeedKt) * Weight(e));
    }

    private double AlongSurprise(IReadOnlyCollection<ForecastError> errors)
    {
        var form = Form();
        return Surprise(errors, e => e.AlongNmi, e => form.AlongBiasFactor(e.SpeedKt), e => form.AlongFactor(e.SpeedKt));
    }

    private double WindSurprise(IReadOnlyCollection<ForecastError> errors)
    {
        var form = Form();
        return Surprise(errors, e => e.WindKt, _ => 1, e => form.WindFactor(e.ForecastKt));
    }

    private double SizeSurprise(IReadOnlyCollection<ForecastError> errors)
    {
        var form = Form();
        return Surprise([.. errors.Where(e => e.LnSize is not null && e.LeadHours <= LastSizeLead)], e => e.LnSize!.Value, _ => 1, e => form.SizeFactor(e.ForecastKt));
    }

    /// <summary>Minus the logarithm of the likelihood of normal errors with the best spread and bias at each lead; constants left out.</summary>
    private static double Surprise(
        IReadOnlyCollection<ForecastError> errors, Func<ForecastError, double> value, Func<ForecastError, double> biasFactor, Func<ForecastError, double> factor)
    {
        var sum = 0.0;
        foreach (var lead in errors.GroupBy(e => e.LeadHours).Where(lead => MeasuredLeads.Contains(lead.Key)))
        {
            var bias = lead.Sum(e => value(e) * biasFactor(e) / Square(factor(e))) / lead.Sum(e => Square(biasFactor(e) / factor(e)));
            var sigma = Rms(lead.Select(e => (value(e) - bias * biasFactor(e)) / factor(e)));
            sum += lead.Count() * Math.Log(sigma) + lead.Sum(e => Math.Log(factor(e)));
        }

        return sum;
    }

    private static double[] Leads(Func<double, double> value) =>
        [.. ErrorStatistics.LeadHours.Select(lead => lead == LeadBetween ? (value(48) + value(72)) / 2 : value(lead))];

    /// <summary>Correlations from lead to lead; that from 48 to 72 h goes in two equal steps by way of 60 h.</summary>
    private static double[] Rhos(IReadOnlyCollection<ForecastError> errors, Func<ForecastError, double> value)
    {
        var byForecast = errors.GroupBy(e => (e.Storm, e.Origin)).Select(forecast => forecast.ToDictionary(e => e.LeadHours, value)).ToArray();
        var leads = ErrorStatistics.LeadHours;
        return [.. Enumerable.Range(1, leads.Count - 1).Select(k =>
            leads[k] == LeadBetween || leads[k - 1] == LeadBetween ? Math.Sqrt(Rho(48, 72)) : Rho(leads[k - 1], leads[k]))];

        double Rho(double from, double to)
        {
            var pairs = byForecast.Where(by => by.ContainsKey(from) && by.ContainsKey(to)).Select(by => (X: by[from], Y: by[to])).ToArray();
            return pairs.Length == 0 ? 0 : pairs.Sum(p => p.X * p.Y) / Math.Sqrt(pairs.Sum(p => p.X * p.X) * pairs.Sum(p => p.Y * p.Y));
        }
    }

    private static double Rms(IEnumerable<double> values) => Math.Sqrt(values.Select(Square).DefaultIfEmpty(0).Average());

    private static double Square(double x) => x * x;
}
