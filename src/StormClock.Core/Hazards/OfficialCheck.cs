using StormClock.Core.Advisories;
using StormClock.Core.Garden;
using StormClock.Core.Units;

namespace StormClock.Core.Hazards;

/// <summary>One storm's chance of 34 kt at one site by the members of an advisory, beside the official chance issued with it.</summary>
/// <param name="Ours">0 to 1, from the synoptic time of the advisory to the end of its forecast.</param>
public sealed record OfficialCheck(OfficialChances Official, double Ours)
{
    public double OfficialChance => Official.Chance(Wind.GaleKt);

    /// <summary>The sources differ on wind to come; then the larger chance counts.</summary>
    public bool Differs => !AlreadyThere && OfficialBlend.Differ(Ours, OfficialChance);

    /// <summary>
    /// The highest chance that is given, and in the first period, is wind that blew at the place at the synoptic time (D: so in all
    /// three such disagreements on Ian). Ours begins at issue and knows whether it blows still.
    /// </summary>
    private bool AlreadyThere => Official.By(Wind.GaleKt, 12) >= 0.99;

    /// <summary>Every standing storm at every site for which its own table names a location near enough.</summary>
    public static IReadOnlyList<OfficialCheck> Of(
        IReadOnlyList<CycloneAdvisory> cyclones,
        IReadOnlyList<WindProbabilityAdvisory> tables,
        IReadOnlyList<Site> sites,
        Func<CycloneAdvisory, Site, WindMembers> members) =>
    [
        .. from cyclone in cyclones
           from table in tables
           where table.BelongsTo(cyclone)
           from site in sites
           let official = OfficialChances.At(table, site.At)
           where official is not null
           select new OfficialCheck(official, ChanceOf(members(cyclone, site))),
    ];

    private static double ChanceOf(WindMembers members) => (double)MemberHours.InOrder(members.ArrivalHours(Wind.GaleKt)).Length / members.Count;
}
