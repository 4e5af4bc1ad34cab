using CsCheck;
using StormClock.Core.Plan;

namespace StormClock.Core.Tests.Plan;

public class PlanGridTests
{
    private static readonly Instant Noon = Instant.FromUtc(2027, 7, 20, 12, 0);

    [Fact]
    public void Grid_NowBetweenFives_BeginsOnTheNextFive()
    {
        var grid = new PlanGrid(Noon + Duration.FromSeconds(1), Noon + Duration.FromMinutes(21), []);
        Assert.Equal((3, Noon + Duration.FromMinutes(5), Noon + Duration.FromMinutes(20)), (grid.Slots, grid.At(0), grid.At(3)));
    }

    [Fact]
    public void Grid_HorizonBeforeNow_IsEmpty() => Assert.Equal(0, new PlanGrid(Noon, Noon - Duration.FromHours(1), []).Slots);

    /// <summary>In heat nine slots an hour, twelve else.</summary>
    [Theory]
    [InlineData(0, 12)]
    [InlineData(1, 9)]
    public void Grid_AnHour_HoldsSoManySlots(int hotHours, int slots) =>
        Assert.Equal(slots, new PlanGrid(Noon, Noon + Duration.FromHours(1), [new(Noon, Noon + Duration.FromHours(hotHours))]).Slots);

    /// <summary>Where the slots lie does not matter: an instant is found again, work never ends after the slots that it takes, and slots never overlap.</summary>
    [Fact]
    public void Grid_AnyHeat_FindsItsOwnTimesAgain() =>
        Check.Sample(
            from seconds in Gen.Int[0, 100_000]
            from hours in Gen.Int[0, 60]
            from heat in Gen.Int[0, 3000]
            from minutes in Gen.Int[0, 1000]
            from work in Gen.Int[1, 300]
            select (now: Noon + Duration.FromSeconds(seconds), hours, heat, minutes, work),
            g =>
            {
                var grid = new PlanGrid(g.now, g.now + Duration.FromHours(g.hours), [new(Noon + Duration.FromMinutes(g.heat), Noon + Duration.FromMinutes(g.heat + g.minutes))]);
                for (var slot = 0; slot < grid.Slots; slot++)
                {
                    Assert.InRange(grid.At(slot + 1) - grid.At(slot), Duration.FromMinutes(5), Duration.FromMinutes(10));
                    Assert.Equal(slot, grid.AtOrAfter(grid.At(slot)));
                    Assert.Equal(slot, grid.AtOrAfter(grid.At(slot) - Duration.FromSeconds(1)));
                    Assert.Equal(slot, grid.EndedBy(grid.At(slot)));
                    Assert.Equal(slot, grid.EndedBy(grid.At(slot + 1) - Duration.FromSeconds(1)));
                }

                var length = PlanGrid.Length(g.work);
                if (length <= grid.Slots) Assert.InRange(grid.EndOf(0, g.work), grid.At(0) + Duration.FromMinutes(g.work), grid.At(length));
            },
            iter: 500);
}
