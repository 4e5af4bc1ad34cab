using StormClock.Core.Hazards;
using StormClock.Skill.Refit;
using StormClock.Skill.Score;

namespace StormClock.Core.Tests.Hazards;

/// <summary>Whether mixing the official chances in makes ours better, on forecasts that were issued. Prints the table.</summary>
public class OfficialBlendScoreTests(ITestOutputHelper output)
{
    private static readonly int[] Leads = [12, 24, 36, 48, 72, 96, 120];
    private static readonly double[] Winds = [34, 50, 64];
    private const int Members = 1000;
    private const double HoursToIssue = 3;

    private static Draws SomeDraws { get; } = new([.. Enumerable.Range(0, Members).SelectMany(m => Draws.Default.Of(m).ToArray())]);

    [Theory(Explicit = true), Trait("Category", "Long")]
    [InlineData("A", "cases-2016-2018.txt.gz")]
    [InlineData("B", "cases-2022-2025.txt.gz")]
    public void Blend_IssuedForecasts_BeatsTheOfficialChancesAt48Hours(string set, string cases)
    {
        var errors = RefitCommand.LeavingOut();
        var scores = Winds.Select(_ => Leads.Select(_ => new Score()).ToArray()).ToArray();
        foreach (var one in ClockCase.Read(Path.Combine(Shared.Folder("clock-cases"), cases)))
        {
            var track = ForecastTrack.Of(one.Advisory);
            foreach (var place in one.Places)
            {
                var members = Ensemble.Run(track, place.At, Winds, errors(one.Advisory.StormId), SomeDraws);
                for (var t = 0; t < Winds.Length; t++) Add(scores[t], members, Winds[t], place.Outcomes[t]);
            }
        }

        for (var t = 0; t < Winds.Length; t++)
        {
            for (var k = 0; k < Leads.Length; k++) output.WriteLine($"set {set} {Winds[t]} kt {Leads[k],3} h  {scores[t][k]}");
        }

        Assert.All(scores, wind => Assert.True(wind[3].Mixed < wind[3].Official, $"{wind[3]}"));
        if (set == "A")
        {
            Assert.True(scores[1][3].Mixed <= 0.0166, $"{scores[1][3]}");
            Assert.True(scores[2][3].Mixed <= 0.0070, $"{scores[2][3]}");
        }
    }

    private static void Add(Score[] scores, WindMembers members, double wind, ClockOutcome outcome)
    {
        // As in the other scores: nothing to foretell where the wind blows at issue.
        if (outcome.OfficialPercent[0] < 0 || outcome.ArrivalOfWholeRadii <= HoursToIssue) return;
        var by = WindCrossing.Of(members, wind, members.Origin).ChanceBy;
        for (var k = 0; k < Leads.Length; k++)
        {
            var official = outcome.OfficialPercent[k] / 100;
            scores[k].Add(by[Leads[k]], official, OfficialBlend.Chance(wind, by[Leads[k]], official), outcome.Arrival <= Leads[k], hasRow: outcome.OfficialPercent[^1] > 0);
        }
    }

    private sealed class Score
    {
        private int count, rows;
        private double ours, official, mixed, rowsOnly;

        public double Official => official / count;

        public double Mixed => mixed / count;

        /// <param name="hasRow">The location has a row for this wind and not only for a weaker one.</param>
        public void Add(double our, double their, double both, bool came, bool hasRow)
        {
            var outcome = came ? 1.0 : 0.0;
            count++;
            if (hasRow) rows++;
            ours += Square(our - outcome);
            official += Square(their - outcome);
            mixed += Square(both - outcome);
            rowsOnly += Square((hasRow ? both : our) - outcome);
        }

        public override string ToString() =>
            $"Brier ours {ours / count:F4}  official {Official:F4}  mixed {Mixed:F4}  mixed only where the wind has a row {rowsOnly / count:F4}  (n = {count}, rows {rows})";

        private static double Square(double x) => x * x;
    }
}
