using StormClock.Service.Books.Counties;

namespace StormClock.Service.Tests.Books;

public class NearCountiesTests
{
    /// <summary>County seats and towns, positions from maps; codes by FIPS 6-4 (M): Lee FL, Carteret NC, Hidalgo TX, Montgomery MD.</summary>
    [Theory]
    [InlineData(26.64, -81.87, "FLC071", "012071")]
    [InlineData(34.72, -76.73, "NCC031", "037031")]
    [InlineData(26.20, -98.23, "TXC215", "048215")]
    [InlineData(38.99, -77.03, "MDC031", "024031")]
    public void Near_PlaceInTheUnitedStates_NamesItsCounty(double lat, double lon, string ugc, string same)
    {
        var near = NearCounties.Of(new(lat, lon));
        Assert.Contains(near, county => (county.Ugc, county.Same) == (ugc, same));
        Assert.Equal(near.OrderBy(county => county.Nmi), near);
    }

    [Theory]
    [InlineData(-20.41, 118.62)] // Australia
    [InlineData(30, -75)] // the open Atlantic
    [InlineData(47.6, -122.3)] // in the west, which the table lacks
    public void Near_PlaceOutsideTheTable_NamesNone(double lat, double lon) => Assert.Empty(NearCounties.Of(new(lat, lon)));
}
