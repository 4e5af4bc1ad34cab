using StormClock.Skill;
using StormClock.Skill.Refit;
using StormClock.Skill.Score;

const string Usage = """
    How good the wind outlook is, and where its error statistics come from. Reads ../shared/data beside the repository.

      score [--members N] [--every K] [--statistics left-out | earlier | shipped]
          Scores clock-cases: with statistics that leave out the storm that is scored (the default), with those of years before
          each set, or with those of the product. K above 1 looks at every K-th place only. A full run with the default also
          draws docs/reliability.svg.
      refit
          Fits the Atlantic statistics anew and writes src/StormClock.Core/Hazards/Data/errors-atlantic.txt.
      counties
          Writes src/StormClock.Service/Books/Counties/us-counties.txt, from which check proposes codes.
    """;

switch (args)
{
    case ["score", .. var options]: return ScoreCommand.Run(options, Console.Out, Console.Error);
    case ["refit"]: return RefitCommand.Run(Console.Out);
    case ["counties"]: return CountiesCommand.Run(Console.Out);
    default:
        Console.Error.WriteLine(Usage);
        return 1;
}
