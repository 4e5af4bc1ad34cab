using StormClock.Core.Garden;
using StormClock.Core.Loads;

namespace StormClock.Core.Plan;

/// <summary>Who in the book can do a job together.</summary>
internal sealed class Crew(GardenBook book)
{
    /// <summary>With more teams than this for a job, those late in the book are not looked at; six people make fifteen pairs.</summary>
    private const int MostTeams = 40;

    private readonly Dictionary<(int Size, bool Ladder, double MassKg), IReadOnlyList<int[]>> known = [];

    /// <summary>Everybody who works: the keeper looks after the installation.</summary>
    public IReadOnlyList<Person> Hands { get; } = [.. book.People.Where(person => person.Role != PersonRole.Keeper)];

    /// <summary>What is lifted at a time, kg; 0 when nothing is or nothing is known.</summary>
    public double LiftedKg(Job job) => job.LiftedKg(book.ItemOf(job)) ?? 0;

    /// <summary>
    /// Teams of the size the job asks for, by index into <see cref="Hands"/> and in the order of the book. What one alone must not
    /// lift goes to two.
    /// </summary>
    public IReadOnlyList<int[]> TeamsFor(Job job)
    {
        var mass = LiftedKg(job);
        var size = Math.Max(1, job.People);
        var teams = Teams(size, job.Class == WorkClass.Ladder, mass);
        return teams.Count == 0 && size == 1 && mass > 0 && !LiftedByOne(mass) ? Teams(2, job.Class == WorkClass.Ladder, mass) : teams;
    }

    /// <summary>Why nobody can do a job that has no team.</summary>
    public LeftReason WhyNobody(Job job)
    {
        var size = Math.Max(1, job.People);
        if (Hands.Count == 0) return LeftCause.Nobody;
        if (Hands.Count < size) return new(LeftCause.TooFewPeople) { People = size };
        if (LiftedKg(job) is > 0 and var mass && Teams(size, false, mass).Count == 0) return new(LeftCause.TooHeavy) { MassKg = mass };
        return job.People > 1 ? new LeftReason(LeftCause.TooFewClimb) { People = size } : LeftCause.NobodyClimbsAlone;
    }

    private bool LiftedByOne(double mass) => Hands.Any(person => person.LiftKg >= mass);

    private IReadOnlyList<int[]> Teams(int size, bool ladder, double mass)
    {
        if (known.TryGetValue((size, ladder, mass), out var teams)) return teams;
        var able = Enumerable.Range(0, Hands.Count).Where(i => !ladder || CanClimb(Hands[i], alone: size == 1)).ToList();
        var all = Groups(able, size).Where(team => Lifts(team, mass));
        return known[(size, ladder, mass)] = [.. all.Take(MostTeams)];
    }

    private static bool CanClimb(Person person, bool alone) => !person.NoLadder && (person.LadderAlone || !alone);

    private bool Lifts(int[] team, double mass)
    {
        if (mass <= 0) return true;
        var sum = team.Sum(i => Hands[i].LiftKg);
        return mass <= (team.Length == 1 ? sum : sum * Lifting.TwoPeopleShare) + 1e-9;
    }

    private static IEnumerable<int[]> Groups(List<int> from, int size)
    {
        if (size == 0) return [[]];
        return Enumerable.Range(0, from.Count)
            .SelectMany(i => Groups(from[(i + 1)..], size - 1).Select(rest => rest.Prepend(from[i]).ToArray()));
    }
}
