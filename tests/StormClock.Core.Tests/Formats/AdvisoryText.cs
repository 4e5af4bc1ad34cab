using System.Text;
using StormClock.Core.Advisories;
using StormClock.Core.Formats.ForecastAdvisory;

namespace StormClock.Core.Tests.Formats;

/// <summary>Texts in the layout of a forecast/advisory, made of retyped or invented numbers.</summary>
internal static class AdvisoryText
{
    /// <summary>An invented storm: three forecast points with radii, one without, dissipation at the end.</summary>
    public const string Invented = """
        000
        WTNT23 KNHC 300845
        TCMAT3

        HURRICANE QUELLE FORECAST/ADVISORY NUMBER   7
        NWS NATIONAL HURRICANE CENTER MIAMI FL       AL152027
        0900 UTC THU SEP 30 2027

        HURRICANE CENTER LOCATED NEAR 24.1N  70.2W AT 30/0900Z
        MAX SUSTAINED WINDS  75 KT WITH GUSTS TO  90 KT.
        64 KT....... 20NE  15SE   0SW  15NW.
        50 KT....... 50NE  40SE  20SW  40NW.
        34 KT.......110NE  90SE  50SW  80NW.
        12 FT SEAS..200NE 180SE  90SW 150NW.

        REPEAT...CENTER LOCATED NEAR 24.1N  70.2W AT 30/0900Z
        AT 30/0600Z CENTER WAS LOCATED NEAR 23.9N  69.4W

        FORECAST VALID 30/1800Z 24.8N  72.4W
        MAX WIND  80 KT...GUSTS 100 KT.
        64 KT... 25NE  20SE  10SW  20NW.
        50 KT... 50NE  40SE  20SW  40NW.
        34 KT...120NE  90SE  50SW  90NW.

        FORECAST VALID 01/0600Z 26.0N  74.9W
        MAX WIND  70 KT...GUSTS  85 KT.
        50 KT... 40NE  40SE  20SW  40NW.
        34 KT...110NE  90SE  50SW  90NW.

        FORECAST VALID 02/0600Z 31.5N  77.0W...INLAND
        MAX WIND  45 KT...GUSTS  55 KT.
        34 KT... 80NE  70SE  30SW  40NW.

        OUTLOOK VALID 03/0600Z 36.0N  75.0W...POST-TROP/REMNT LOW
        MAX WIND  30 KT...GUSTS  40 KT.

        OUTLOOK VALID 04/0600Z...DISSIPATED

        NEXT ADVISORY AT 30/1500Z

        $$
        FORECASTER NOBODY
        """;

    public static ReadResult<CycloneAdvisory> Read(string text) => ForecastAdvisoryReader.Read(Encoding.UTF8.GetBytes(text));

    public static CycloneAdvisory ReadGood(string text)
    {
        var result = Read(text);
        Assert.True(result.IsGood, string.Join('\n', result.Faults));
        return result.Value!;
    }
}
