using StormClock.Core.Hazards;

namespace StormClock.Core.Tests.Hazards;

/// <summary>
/// The statistics with which science.md section 9 states its vectors: official Atlantic forecasts 2014–2018 against best track
/// (science.md 3.2, D), without any growth with speed or strength. The product's own are newer.
/// </summary>
internal static class ReferenceStatistics
{
    public static ErrorStatistics Atlantic2014To2018 { get; } = new(
        AlongSigmaNmi: [11.1706, 21.7970, 34.2204, 46.5799, 61.2879, 81.6028, 101.9177, 152.1233, 203.3215],
        AlongBiasNmi: [1.2318, 1.3637, 3.0897, 5.4231, 5.7636, 9.1905, 12.6173, 25.4663, 41.2284],
        CrossSigmaNmi: [10.0787, 20.8249, 30.5302, 42.0349, 54.2558, 66.8756, 79.4953, 110.2972, 160.3226],
        WindSigmaKt: [4.3608, 7.7927, 11.0083, 13.1858, 14.4195, 15.4738, 16.5282, 17.5225, 17.8239],
        WindBiasKt: [1.1748, 0.5591, 0.4903, 0.7158, 1.0000, 0.8820, 0.7640, 0.5444, 0.2439],
        SizeSigma: [0.2123, 0.2999, 0.3280, 0.3531, 0.3811, 0.3983, 0.4155, 0.4255, 0.4355],
        AlongRho: [0.6273, 0.7293, 0.7862, 0.7835, 0.8606, 0.8606, 0.7746, 0.8240],
        CrossRho: [0.6905, 0.6796, 0.7617, 0.7363, 0.7813, 0.7813, 0.6440, 0.7974],
        WindRho: [0.6804, 0.7129, 0.7903, 0.8166, 0.8068, 0.8068, 0.6897, 0.7102],
        SizeRho: [0.6210, 0.6462, 0.7405, 0.7729, 0.8157, 0.8157, 0.7000, 0.7000]);
}
