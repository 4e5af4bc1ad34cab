using StormClock.Core.Units;

namespace StormClock.Core.Advisories;

/// <summary>Where the centre of a storm was, as last told.</summary>
/// <param name="StormName">As written, such as <c>IAN</c>.</param>
/// <param name="At">When it was there by the text, not when that was heard.</param>
public sealed record CentreFix(string StormName, GeoPoint Centre, Instant At)
{
    /// <summary>The newest for the storm of one full advisory, from advisories of either sort issued by now.</summary>
    /// <param name="advisoryId">Of a full advisory, such as <see cref="Decision.Cause"/> may be.</param>
    /// <returns>Null where nothing of that id is known, or it is of another sort, or no centre was ever given.</returns>
    public static CentreFix? Newest(AdvisoryLedger ledger, string advisoryId, Instant now)
    {
        var told = ledger.All.Select(heard => heard.Advisory).Where(advisory => advisory.Issued <= now).ToList();
        return told.OfType<CycloneAdvisory>().FirstOrDefault(advisory => advisory.Id == advisoryId) is { } word
            ? told.Select(advisory => Of(advisory, word.StormId)).OfType<CentreFix>().OrderBy(fix => fix.At).LastOrDefault()
            : null;
    }

    /// <summary>A correction comes after what it corrects, and counts.</summary>
    private static CentreFix? Of(Advisory advisory, string stormId) => advisory switch
    {
        CycloneAdvisory { Now.Centre: { } centre } full when full.StormId == stormId => new(full.StormName, centre, full.Now.Valid),
        CyclonePosition position when position.StormId == stormId => new(position.StormName, position.Centre, position.IssuedAt),
        _ => null,
    };
}
