namespace StormClock.Core.Units;

/// <summary>Categories of tropical cyclones, as data for words only: nearly all garden work ends below the first of either scale.</summary>
public static class StormCategory
{
    private static readonly double[] SaffirSimpsonMph = [74, 96, 111, 130, 157];
    private static readonly double[] AustralianGustKmh = [125, 165, 225, 280];

    /// <summary>Saffir-Simpson, by 1-min sustained wind (mph edges R): 1 to 5, 0 below hurricane force. Wind only, not water.</summary>
    public static int SaffirSimpson(double sustainedMph) => SaffirSimpsonMph.Count(edge => sustainedMph >= edge);

    /// <summary>Australian, by the strongest gust over open flat land, km/h (R): 1 to 5 for a tropical cyclone.</summary>
    public static int Australian(double gustKmh) => 1 + AustralianGustKmh.Count(edge => gustKmh >= edge);
}
