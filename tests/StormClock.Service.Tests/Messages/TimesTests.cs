using NodaTime.Text;
using StormClock.Core.Garden;
using StormClock.Service.Messages;
using StormClock.Service.Wording;

namespace StormClock.Service.Tests.Messages;

public class TimesTests
{
    private static readonly Instant Now = At("2027-11-05T16:00:00Z");

    /// <summary>Clocks in New York go back on Sunday 7 November 2027 at 06:00 UTC: 01:30 comes twice, the zone tells which.</summary>
    [Theory]
    [InlineData("2027-11-05T18:07:00Z", "America/New_York", "Fri 14:00 EDT", "a deadline is rounded down")]
    [InlineData("2027-11-05T18:15:00Z", "America/New_York", "Fri 14:15 EDT", "a quarter stays")]
    [InlineData("2027-11-07T05:30:00Z", "America/New_York", "Sun 01:30 EDT", "the first 01:30")]
    [InlineData("2027-11-07T06:30:00Z", "America/New_York", "Sun 01:30 EST", "the second 01:30")]
    [InlineData("2027-11-08T16:00:00Z", "America/New_York", "Mon 11:00 EST", "72 h: still firm")]
    [InlineData("2027-11-08T16:16:00Z", "America/New_York", "about Mon 11:15 EST", "beyond 72 h")]
    [InlineData("2027-11-12T16:00:00Z", "America/New_York", "about Fri 12 Nov 11:00 EST", "another week's Friday is dated")]
    [InlineData("2027-11-05T18:07:00Z", "Australia/Brisbane", "Sat 04:00 AEST", "no daylight saving")]
    [InlineData("2027-11-05T18:07:00Z", "Asia/Kathmandu", "Fri 23:45 UTC+0545", "an offset on the quarter, no abbreviation")]
    [InlineData("2027-11-05T18:07:00Z", "America/Sao_Paulo", "Fri 15:00 UTC-03", "no abbreviation")]
    public void Deadline_InTheGardensZone_Reads(string at, string zone, string expected, string why) =>
        Assert.Equal($"{why}: {expected}", $"{why}: {Read(In(zone).Deadline(At(at)))}");

    [Theory]
    [InlineData("2027-11-05T18:07:00Z", "Fri 14:15 EDT")]
    [InlineData("2027-11-05T18:15:00Z", "Fri 14:15 EDT")]
    [InlineData("2027-11-05T18:15:00.001Z", "Fri 14:30 EDT")]
    public void NotBefore_RoundsUp(string at, string expected) => Assert.Equal(expected, Read(In("America/New_York").NotBefore(At(at))));

    [Fact]
    public void Exact_LongAgo_IsToTheMinuteAndDated() =>
        Assert.Equal("Thu 28 Oct 11:07 EDT", Read(In("America/New_York").Exact(At("2027-10-28T15:07:00Z"))));

    /// <summary>The same moments for other readers.</summary>
    [Theory]
    [InlineData("2027-11-05T18:07:00Z", "viernes 14:00 EDT", "Fri 2:00 PM EDT", "viernes 2:00 p.m. EDT")]
    [InlineData("2027-11-06T04:05:00Z", "sábado 00:00 EDT", "Sat 12:00 AM EDT", "sábado 12:00 a.m. EDT")]
    [InlineData("2027-11-06T16:00:00Z", "sábado 12:00 EDT", "Sat 12:00 noon EDT", "sábado 12:00 del mediodía EDT")]
    [InlineData("2027-11-06T16:15:00Z", "sábado 12:15 EDT", "Sat 12:15 PM EDT", "sábado 12:15 p.m. EDT")]
    [InlineData("2027-11-10T14:15:00Z", "miércoles 09:15 EST más o menos", "about Wed 9:15 AM EST", "miércoles 9:15 a.m. EST más o menos")]
    [InlineData("2027-11-12T16:00:00Z", "viernes 12 nov 11:00 EST más o menos", "about Fri 12 Nov 11:00 AM EST", "viernes 12 nov 11:00 a.m. EST más o menos")]
    public void Deadline_ByLanguageAndClock_Reads(string at, string spanish, string english12, string spanish12)
    {
        var spoken = Speeches.Us with { Language = Language.Spanish };
        Assert.Equal(
            [spanish, english12, spanish12],
            ((Speech[])[spoken, Speeches.Us with { Clock = ClockForm.Hours12 }, spoken with { Clock = ClockForm.Hours12 }])
                .Select(speech => Read(new Times(DateTimeZoneProviders.Tzdb["America/New_York"], Now, speech).Deadline(At(at)))));
    }

    private static string Read(string time) => time.Replace(Plain.Unbroken, ' ');

    private static Times In(string zone) => new(DateTimeZoneProviders.Tzdb[zone], Now, Speeches.Us);

    private static Instant At(string text) => InstantPattern.ExtendedIso.Parse(text).Value;
}
