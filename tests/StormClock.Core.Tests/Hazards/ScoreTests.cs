using StormClock.Core.Hazards;

namespace StormClock.Core.Tests.Hazards;

/// <summary>
/// The skill of the wind outlook on forecasts that were issued, against what came (science.md 3.6), with the bounds set there. Prints
/// the table. Set A: 2016–2018 with errors of 2011–2015; set B: 2022–2025 with errors of 2014–2018.
/// </summary>
public class ScoreTests(ITestOutputHelper output)
{
    private static readonly int[] Leads = [12, 24, 36, 48, 72, 96, 120];
    private static readonly double[] Thresholds = [34, 50, 64];

    // Enough by science.md 3.6; sampling error is then well under the differences looked at.
    private const int Members = 2000;
    private const double HoursToIssue = 3;

    private static Draws SomeDraws { get; } =
        new([.. Enumerable.Range(0, Members).SelectMany(m => Draws.Default.Of(m).ToArray())]);

    [Fact(Explicit = true), Trait("Category", "Long")]
    public void Outlook_SetA_MeetsTheBar()
    {
        var score = Run("cases-2016-2018.txt.gz", "params9_1115.txt");
        Print("A", score);
        AssertBrier(score, 24, 0.0165);
        AssertBrier(score, 48, 0.0345);
        AssertBrier(score, 72, 0.0510);
        AssertBrier(score, 120, 0.0880);
        Assert.True(score[1].Brier(Array.IndexOf(Leads, 48)) <= 0.0166);
        Assert.True(Math.Abs(score[0].MeanChance(6) - score[0].Base(6)) <= 0.02);
        Assert.True(score[0].TimeError <= 4.2);
        Assert.InRange(score[0].EarlyShare, 0.02, 0.10);
    }

    [Fact(Explicit = true), Trait("Category", "Long")]
    public void Outlook_SetB_MeetsTheBar()
    {
        var score = Run("cases-2022-2025.txt.gz", "params9_1418.txt");
        Print("B", score);
        AssertBrier(score, 24, 0.0235);
        AssertBrier(score, 48, 0.0530);
        AssertBrier(score, 72, 0.0880);
        AssertBrier(score, 120, 0.1480);
        Assert.True(score[0].TimeError <= 4.6);
        Assert.InRange(score[0].EarlyShare, 0.02, 0.10);
    }

    private static Score[] Run(string cases, string statistics)
    {
        var errors = ClockCase.Statistics(statistics);
        var scores = Thresholds.Select(threshold => new Score(threshold)).ToArray();
        foreach (var one in ClockCase.Read(cases))
        {
            var track = ForecastTrack.Of(one.Advisory);
            foreach (var place in one.Places)
            {
                var members = Ensemble.Run(track, place.At, Thresholds, errors, SomeDraws);
                for (var t = 0; t < Thresholds.Length; t++) scores[t].Add(members, place.Outcomes[t]);
            }
        }

        return scores;
    }

    private void Print(string set, Score[] scores)
    {
        foreach (var score in scores)
        {
            output.WriteLine($"set {set}, {score.ThresholdKt} kt, n = {score.Count}");
            for (var lead = 0; lead < Leads.Length; lead++)
                output.WriteLine($"  {Leads[lead],3} h  base {score.Base(lead):P1}  mean {score.MeanChance(lead):P1}  Brier {score.Brier(lead):F4}  official {score.OfficialBrier(lead):F4}");
            output.WriteLine($"  t50c mean abs {score.TimeError:F2} h, bias {score.TimeBias:F2} h (n = {score.Timed}); end mean abs {score.EndError:F2} h");
            output.WriteLine($"  earlier than t10c {score.EarlyShare:P1}, between t10c and t90c {score.WithinShare:P1} (n = {score.Arrived})");
        }
    }

    private static void AssertBrier(Score[] scores, int lead, double bound) =>
        Assert.True(scores[0].Brier(Array.IndexOf(Leads, lead)) <= bound, $"{lead} h: {scores[0].Brier(Array.IndexOf(Leads, lead)):F4} above {bound}");

    private sealed class Score(double thresholdKt)
    {
        private readonly double[] brier = new double[Leads.Length];
        private readonly double[] official = new double[Leads.Length];
        private readonly double[] chance = new double[Leads.Length];
        private readonly double[] came = new double[Leads.Length];
        private double timeError, timeBias, endError;
        private int early, within;

        public double ThresholdKt => thresholdKt;

        public int Count { get; private set; }

        public int Arrived { get; private set; }

        public int Timed { get; private set; }

        public double TimeError => timeError / Timed;

        public double TimeBias => timeBias / Timed;

        public double EndError => endError / Timed;

        public double EarlyShare => early / (double)Arrived;

        public double WithinShare => within / (double)Arrived;

        public double Brier(int lead) => brier[lead] / Count;

        public double OfficialBrier(int lead) => official[lead] / Count;

        public double MeanChance(int lead) => chance[lead] / Count;

        public double Base(int lead) => came[lead] / Count;

        public void Add(WindMembers members, ClockOutcome outcome)
        {
            // Places without an official row for this wind carry −1 throughout.
            if (outcome.OfficialPercent[0] < 0) return;

            // Where the wind already blows at issue there is nothing to foretell.
            if (outcome.ArrivalOfWholeRadii <= HoursToIssue) return;
            Count++;
            var sorted = members.ArrivalHours(thresholdKt).ToArray().Where(hour => !float.IsNaN(hour)).Order().ToArray();
            for (var lead = 0; lead < Leads.Length; lead++)
            {
                var p = sorted.Count(hour => hour <= Leads[lead]) / (double)members.Count;
                var o = outcome.Arrival <= Leads[lead] ? 1.0 : 0.0;
                brier[lead] += (p - o) * (p - o);
                official[lead] += Math.Pow(outcome.OfficialPercent[lead] / 100 - o, 2);
                chance[lead] += p;
                came[lead] += o;
            }

            if (outcome.Arrival is { } arrival && outcome.End is { } end && sorted.Length >= 0.005 * members.Count)
                AddTimes(members, sorted, arrival, end);
        }

        private void AddTimes(WindMembers members, float[] sorted, double arrival, double end)
        {
            Arrived++;
            if (arrival < Share(sorted, 0.1)) early++;
            else if (arrival <= Share(sorted, 0.9)) within++;
            if (sorted.Length < 0.5 * members.Count) return;

            Timed++;
            timeError += Math.Abs(Share(sorted, 0.5) - arrival);
            timeBias += Share(sorted, 0.5) - arrival;
            var ends = members.EndHours(thresholdKt).ToArray().Where(hour => !float.IsNaN(hour)).Order().ToArray();
            endError += Math.Abs(Share(ends, 0.5) - end);
        }

        private static double Share(float[] sorted, double share) => sorted[(int)(share * (sorted.Length - 1))];
    }
}
