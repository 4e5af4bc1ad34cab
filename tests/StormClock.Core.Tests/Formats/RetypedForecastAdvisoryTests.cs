using StormClock.Core.Advisories;
using StormClock.Core.Units;

namespace StormClock.Core.Tests.Formats;

/// <summary>
/// Numbers of real advisories, retyped. Issued by the National Hurricane Center, Miami, unless another office is named.
/// </summary>
public class RetypedForecastAdvisoryTests
{
    /// <summary>Beryl, AL022024, number 18 (science.md G5).</summary>
    [Fact]
    public void Reading_Beryl18_GivesNinePointsWithRadiiToDayFive()
    {
        var beryl = AdvisoryText.ReadGood("""
            000
            WTNT22 KNHC 030245
            TCMAT2

            HURRICANE BERYL FORECAST/ADVISORY NUMBER  18
            NWS NATIONAL HURRICANE CENTER MIAMI FL       AL022024
            0300 UTC WED JUL 03 2024

            HURRICANE CENTER LOCATED NEAR 16.2N  72.7W AT 03/0300Z
            MAX SUSTAINED WINDS 130 KT WITH GUSTS TO 160 KT.
            64 KT....... 35NE  30SE  20SW  30NW.
            50 KT....... 70NE  50SE  40SW  50NW.
            34 KT.......160NE 100SE  60SW 120NW.
            12 FT SEAS..270NE 210SE 150SW 150NW.
            REPEAT...CENTER LOCATED NEAR 16.2N  72.7W AT 03/0300Z
            AT 03/0000Z CENTER WAS LOCATED NEAR 16.1N  71.8W
            FORECAST VALID 03/1200Z 17.2N  75.4W
            MAX WIND 125 KT...GUSTS 150 KT.
            64 KT... 35NE  30SE  20SW  30NW.
            50 KT... 60NE  50SE  40SW  50NW.
            34 KT...150NE 100SE  60SW 100NW.
            FORECAST VALID 04/0000Z 18.1N  78.8W
            MAX WIND 110 KT...GUSTS 135 KT.
            64 KT... 30NE  25SE  20SW  30NW.
            50 KT... 60NE  40SE  30SW  50NW.
            34 KT...140NE 100SE  60SW 100NW.
            FORECAST VALID 04/1200Z 18.7N  82.3W
            MAX WIND  95 KT...GUSTS 115 KT.
            64 KT... 25NE  20SE  15SW  25NW.
            50 KT... 50NE  30SE  20SW  40NW.
            34 KT...130NE  90SE  50SW 100NW.
            FORECAST VALID 05/0000Z 19.3N  85.5W
            MAX WIND  85 KT...GUSTS 105 KT.
            64 KT... 20NE  10SE  10SW  20NW.
            50 KT... 50NE  30SE  20SW  40NW.
            34 KT...120NE  80SE  50SW 100NW.
            FORECAST VALID 05/1200Z 20.1N  88.3W...INLAND
            MAX WIND  55 KT...GUSTS  65 KT.
            50 KT... 30NE  20SE  20SW  35NW.
            34 KT...100NE  70SE  50SW 100NW.
            FORECAST VALID 06/0000Z 21.0N  90.8W...OVER WATER
            MAX WIND  55 KT...GUSTS  65 KT.
            50 KT... 30NE  20SE  20SW  30NW.
            34 KT...100NE  60SE  50SW  90NW.
            OUTLOOK VALID 07/0000Z 22.7N  94.8W...OVER WATER
            MAX WIND  60 KT...GUSTS  75 KT.
            50 KT... 40NE  30SE  20SW  30NW.
            34 KT... 90NE  60SE  50SW  90NW.
            OUTLOOK VALID 08/0000Z 25.0N  97.5W...ON COAST
            MAX WIND  60 KT...GUSTS  75 KT.
            50 KT... 40NE  30SE  30SW  30NW.
            34 KT... 90NE  70SE  50SW  50NW.
            NEXT ADVISORY AT 03/0900Z
            """);

        Assert.Equal(("AL022024", "BERYL", "18"), (beryl.StormId, beryl.StormName, beryl.Number));
        Assert.Equal(Instant.FromUtc(2024, 7, 3, 3, 0), beryl.IssuedAt);
        Assert.Equal(Instant.FromUtc(2024, 7, 3, 0, 0), beryl.Synoptic);
        Assert.Equal("AL022024/18/2024-07-03T03:00Z", beryl.Id);
        Assert.Equal(new GeoPoint(16.2, -72.7), beryl.Now.Centre);
        Assert.Equal((130, 160), (beryl.Now.MaxWindKt, beryl.Now.GustKt));
        Assert.Equal(new QuadrantRadii(160, 100, 60, 120), beryl.Now.Radii34);
        Assert.Equal(new CyclonePoint(beryl.Synoptic, new GeoPoint(16.1, -71.8), null, null, null, null, null), beryl.Before);

        var points = beryl.Forecast.Prepend(beryl.Now).ToList();
        Assert.Equal([3, 12, 24, 36, 48, 60, 72, 96, 120], points.Select(point => (point.Valid - beryl.Synoptic).TotalHours));
        Assert.Equal([130, 125, 110, 95, 85, 55, 55, 60, 60], points.Select(point => point.MaxWindKt!.Value));
        Assert.All(points, point => Assert.True(point.Radii34 is not null && point.Radii50 is not null));
        Assert.Equal([true, true, true, true, true, false, false, false, false], points.Select(point => point.Radii64 is not null));
        Assert.Equal([5], Enumerable.Range(0, 9).Where(i => points[i].OverLand));
        Assert.Equal(new QuadrantRadii(90, 70, 50, 50), points[8].Radii34);
        Assert.Equal(new QuadrantRadii(40, 30, 30, 30), points[8].Radii50);
        Assert.False(beryl.Corrected || beryl.Special || beryl.Potential || beryl.Final);
    }

    /// <summary>Idalia, AL102023, number 13: 29 August with points in September.</summary>
    [Fact]
    public void Reading_Idalia13_CarriesTheDayOverTheEndOfTheMonth()
    {
        var idalia = AdvisoryText.ReadGood("""
            HURRICANE IDALIA FORECAST/ADVISORY NUMBER  13
            NWS NATIONAL HURRICANE CENTER MIAMI FL       AL102023
            2100 UTC TUE AUG 29 2023
            HURRICANE CENTER LOCATED NEAR 26.1N  84.8W AT 29/2100Z
            MAX SUSTAINED WINDS  85 KT WITH GUSTS TO 105 KT.
            FORECAST VALID 31/1800Z 33.9N  77.1W...OVER WATER
            MAX WIND  45 KT...GUSTS  55 KT.
            34 KT...110NE 100SE  80SW  50NW.
            FORECAST VALID 01/0600Z 33.8N  74.2W
            MAX WIND  45 KT...GUSTS  55 KT.
            OUTLOOK VALID 03/1800Z 31.7N  69.0W
            MAX WIND  45 KT...GUSTS  55 KT.
            $$
            """);

        Assert.Equal(
            [Instant.FromUtc(2023, 8, 31, 18, 0), Instant.FromUtc(2023, 9, 1, 6, 0), Instant.FromUtc(2023, 9, 3, 18, 0)],
            idalia.Forecast.Select(point => point.Valid));
        Assert.Null(idalia.Forecast[2].Radii34);
    }

    /// <summary>Ana, July 1991, number 1, National Weather Service Miami: marine advisory, no storm id, radii in words.</summary>
    [Fact]
    public void Reading_Ana1991_UnderstandsTheMarineAdvisory()
    {
        var ana = AdvisoryText.ReadGood("""
            ZCZC MIAWRKAM1 LOC
            TTAA00 KNHC DDHHMM
            TROPICAL STORM ANA MARINE ADVISORY NUMBER   1
            NATIONAL WEATHER SERVICE MIAMI FL
            2200Z WED JUL 03 1991

            TROPICAL STORM CENTER LOCATED NEAR 35.8N  71.8W AT 03/2200Z.
            MAX SUSTAINED WINDS  35 KT WITH GUSTS TO  45 KT.
            RADIUS IN NM OF 34 KT WINDS           50NE  50SE  50SW  50NW.
            RADIUS IN NM OF 12 FT SEAS OR HIGHER  50NE  50SE  50SW  50NW.
            REPEAT CENTER LOCATED NEAR 35.8N  71.8W AT 03/2200Z.
            FORECAST VALID 04/0600Z 37.1N  68.6W.
            MAX SUSTAINED WINDS  40 KT WITH GUSTS TO  50 KT.
            RADIUS IN NM OF 34 KT WINDS  50NE  50SE  50SW  50NW.
            OUTLOOK VALID 06/1800Z 40.0N  40.0W.
            MAX SUSTAINED WINDS  40 KT WITH GUSTS TO  50 KT.
            NEXT ADVISORY AT 04/0400Z.
            """);

        Assert.Equal(("AL-ANA-1991", "ANA"), (ana.StormId, ana.StormName));
        Assert.Equal(Instant.FromUtc(1991, 7, 3, 18, 0), ana.Synoptic);
        Assert.Equal(new QuadrantRadii(50, 50, 50, 50), ana.Now.Radii34);
        Assert.Equal(new GeoPoint(37.1, -68.6), ana.Forecast[0].Centre);
        Assert.Equal((40, 50), (ana.Forecast[1].MaxWindKt, ana.Forecast[1].GustKt));
        Assert.Null(ana.Before);
    }

    /// <summary>Three-C, October 1994, number 1, National Weather Service Honolulu: its fourth and fifth point share one time.</summary>
    [Fact]
    public void Reading_ThreeC1994_KeepsTheFirstOfTwoPointsForOneMoment()
    {
        var three = AdvisoryText.ReadGood("""
            WTPA23 PHNL 222100
            TROPICAL DEPRESSION THREE-C ADVISORY NUMBER 1
            NATIONAL WEATHER SERVICE HONOLULU HI
            2100Z SAT OCT 22 1994
            TROPICAL DEPRESSION CENTER LOCATED NEAR 12.8N 157.3W AT 22/2100Z
            MAX SUSTAINED WINDS  30 KT WITH GUSTS TO  35 KT NEAR THE CENTER.
            FORECAST VALID 24/0600Z 12.8N 157.6W
            MAX WIND  35 KT...GUSTS  45 KT NEAR THE CENTER.
            OUTLOOK VALID 24/1800Z 12.9N 158.0W
            MAX WIND  40 KT...GUSTS  50 KT
            OUTLOOK VALID 24/1800Z 13.2N 158.9W
            MAX WIND  40 KT...GUSTS  50 KT
            NEXT ADVISORY AT 23/0300Z
            """);

        Assert.Equal("CP-THREE-C-1994", three.StormId);
        Assert.Equal([new GeoPoint(12.8, -157.6), new GeoPoint(12.9, -158.0)], three.Forecast.Select(point => point.Centre!.Value));
    }

    /// <summary>Allison, AL012001, number 1, special, with the id in its old form.</summary>
    [Fact]
    public void Reading_Allison2001_CompletesTheTwoDigitYear()
    {
        var allison = AdvisoryText.ReadGood("""
            ZCZC MIATCMAT1 ALL
            TTAA00 KNHC DDHHMM
            TROPICAL STORM ALLISON SPECIAL FORECAST/ADVISORY NUMBER   1
            NATIONAL WEATHER SERVICE MIAMI FL   AL0101
            1900Z TUE JUN 05 2001
            TROPICAL STORM CENTER LOCATED NEAR 28.3N  94.7W AT 05/1900Z
            MAX SUSTAINED WINDS  50 KT WITH GUSTS TO  60 KT.
            50 KT.......100NE 100SE   0SW   0NW.
            AT 05/1800Z CENTER WAS LOCATED NEAR 28.1N  94.7W
            FORECAST VALID 06/1800Z 31.6N  93.9W...INLAND DISSIPATING
            MAX WIND  30 KT...GUSTS  40 KT.
            NNNN
            """);

        Assert.Equal("AL012001", allison.StormId);
        Assert.True(allison.Special);
        Assert.Equal((CycloneNature.Tropical, true), (allison.Forecast[0].Nature, allison.Forecast[0].OverLand));
    }

    /// <summary>Josephine, AL102008, number 17: corrected and last, its title broken over two lines.</summary>
    [Fact]
    public void Reading_Josephine17_SeesCorrectionAndLast()
    {
        var josephine = AdvisoryText.ReadGood("""
            ZCZC MIATCMAT5 ALL
            TTAA00 KNHC DDHHMM CCA
            TROPICAL DEPRESSION JOSEPHINE FORECAST/ADVISORY NUMBER
            17...CORRECTED
            NWS TPC/NATIONAL HURRICANE CENTER MIAMI FL   AL102008
            0900 UTC SAT SEP 06 2008
            CENTER LOCATED NEAR 16.8N  36.9W AT 06/0900Z
            MAX SUSTAINED WINDS  25 KT WITH GUSTS TO  35 KT.
            FORECAST VALID 06/1800Z 17.5N  38.3W...REMNANT LOW
            MAX WIND  25 KT...GUSTS  35 KT.
            THIS IS THE LAST FORECAST/ADVISORY ISSUED BY THE
            NATIONAL HURRICANE CENTER ON THIS SYSTEM
            $$
            """);

        Assert.Equal(("17", true, true), (josephine.Number, josephine.Corrected, josephine.Final));
        Assert.Equal("AL102008/17/2008-09-06T09:00Z/corrected", josephine.Id);
        Assert.Equal(CycloneNature.RemnantLow, josephine.Forecast[0].Nature);
    }

    /// <summary>Two, AL022017, number 1: a potential tropical cyclone with dissipation forecast.</summary>
    [Fact]
    public void Reading_Two2017_KnowsPotentialAndDissipated()
    {
        var two = AdvisoryText.ReadGood("""
            POTENTIAL TROPICAL CYCLONE TWO FORECAST/ADVISORY NUMBER   1
            NWS NATIONAL HURRICANE CENTER MIAMI FL       AL022017
            2100 UTC SUN JUN 18 2017
            POTENTIAL TROP CYCLONE CENTER LOCATED NEAR  7.5N  50.4W AT 18/2100Z
            MAX SUSTAINED WINDS  30 KT WITH GUSTS TO  40 KT.
            FORECAST VALID 19/1800Z  9.5N  57.0W...TROPICAL CYCLONE
            MAX WIND  35 KT...GUSTS  45 KT.
            34 KT...60NE   0SE   0SW  60NW.
            FORECAST VALID 21/1800Z 13.5N  71.5W...POST-TROP/REMNT LOW
            MAX WIND  30 KT...GUSTS  40 KT.
            OUTLOOK VALID 22/1800Z...DISSIPATED
            $$
            """);

        Assert.True(two.Potential);
        Assert.Equal(
            [CycloneNature.Tropical, CycloneNature.RemnantLow, CycloneNature.Dissipated],
            two.Forecast.Select(point => point.Nature));
        Assert.Equal(new QuadrantRadii(60, 0, 0, 60), two.Forecast[0].Radii34);
        Assert.Null(two.Forecast[2].Centre);
    }
}
