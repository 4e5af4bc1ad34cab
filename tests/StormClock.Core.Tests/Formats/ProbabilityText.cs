using System.Text;
using StormClock.Core.Advisories;
using StormClock.Core.Formats.WindProbabilities;

namespace StormClock.Core.Tests.Formats;

/// <summary>The text of wind speed probabilities, made of retyped numbers.</summary>
internal static class ProbabilityText
{
    /// <summary>Number 16 on Ian, cut to the heading and six of its rows, retyped.</summary>
    public const string Ian16 = """
        000
        FONT14 KNHC 270257
        PWSAT4

        HURRICANE IAN WIND SPEED PROBABILITIES NUMBER  16
        NWS NATIONAL HURRICANE CENTER MIAMI FL       AL092022
        0300 UTC TUE SEP 27 2022

        CHANCES OF SUSTAINED (1-MINUTE AVERAGE) WIND SPEEDS OF AT LEAST
           ...34 KT (39 MPH... 63 KM/H)...
           ...50 KT (58 MPH... 93 KM/H)...
           ...64 KT (74 MPH...119 KM/H)...

        FORECAST HOUR    (12)   (24)    (36)    (48)    (72)    (96)   (120)
        - - - - - - - - - - - - - - - - - - - - - - - - - - - - - - - - - -
        LOCATION       KT

        KEY WEST FL    34 12  55(67)   8(75)   2(77)   2(79)   1(80)   1(81)
        KEY WEST FL    50  1  12(13)   6(19)   2(21)   X(21)   1(22)   X(22)

        FT MYERS FL    34  1   8( 9)  52(61)  13(74)   7(81)   2(83)   X(83)
        FT MYERS FL    50  X   1( 1)  15(16)  18(34)   9(43)   2(45)   1(46)
        FT MYERS FL    64  X   X( X)   6( 6)   9(15)   5(20)   1(21)   X(21)

        GFMX 290N 850W 34  X   2( 2)  12(14)  18(32)  20(52)   4(56)   1(57)

        $$
        FORECASTER NOBODY
        """;

    public static ReadResult<WindProbabilityAdvisory> Read(string text) => WindProbabilityReader.Read(Encoding.UTF8.GetBytes(text));

    public static WindProbabilityAdvisory ReadGood(string text)
    {
        var result = Read(text);
        Assert.True(result.IsGood, string.Join('\n', result.Faults));
        return result.Value!;
    }
}
