using StormClock.Skill.Score;

const string Usage = """
    How good the wind outlook is, and where its error statistics come from. Reads ../shared/data beside the repository.

      score [--members N] [--every K] [--shipped]
          Scores clock-cases with statistics of years before each set, or with those that the product uses (--shipped, which
          have seen the sets). K above 1 looks at every K-th place only. A full run also draws docs/reliability.svg.
    """;

switch (args)
{
    case ["score", .. var options]: return ScoreCommand.Run(options, Console.Out, Console.Error);
    default:
        Console.Error.WriteLine(Usage);
        return 1;
}
