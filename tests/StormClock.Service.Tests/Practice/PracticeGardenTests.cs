using StormClock.Core.Garden;
using StormClock.Core.Units;
using StormClock.Service.Books;

namespace StormClock.Service.Tests.Practice;

public class PracticeGardenTests
{
    private static GardenBook Garden(string id) => GardenReader.Read(File.ReadAllText(Path.Combine(ConfigFiles.Folder, "practice", $"garden-{id}.yaml")), id).Value!;

    [Fact]
    public void PracticeGardens_All_ReadWithoutFaultAndAreMarked()
    {
        var files = GardenFiles.Load(Path.Combine(ConfigFiles.Folder, "practice"));

        Assert.Equal(2, files.Count);
        Assert.All(files, file => Assert.True(file.Read.IsGood, string.Join("\n", file.Read.Faults)));
        Assert.All(files, file => Assert.True(file.InForce!.Practice));
        Assert.All(files.SelectMany(file => file.InForce!.People), person => Assert.EndsWith("@practice.invalid", person.Email));
    }

    [Fact]
    public void TernHook_HasWorkOfEveryClassForOneAndTwoOnTwoSites()
    {
        var book = Garden("tern-hook");
        var jobs = book.Jobs.ToList();

        Assert.Equal((UnitSystem.UsCustomary, 2, 2), (book.Units, book.Sites.Count, book.People.Count));
        Assert.InRange(book.Items.Count, 25, 30);
        Assert.InRange(jobs.Count, 35, 40);
        Assert.Equal(Enum.GetValues<WorkClass>(), jobs.Select(job => job.Class).Distinct().Order());
        Assert.True(jobs.Count(job => job.People == 2) >= 8);
        Assert.True(jobs.Count(job => job.After.Count > 0) >= 8);
        Assert.True(jobs.Count(job => job.LastRound) >= 5);
        Assert.True(jobs.Count(job => job.Fallback is not null) >= 10);
    }

    [Fact]
    public void TernHook_LacksSomeMaterialsAndSomeFloor()
    {
        var book = Garden("tern-hook");
        var need = book.Jobs.SelectMany(job => job.Materials).GroupBy(need => need.Material).ToDictionary(same => same.Key, same => same.Sum(need => need.Quantity));
        var have = book.Supplies.ToDictionary(supply => supply.Material, supply => supply.Quantity);

        Assert.All(need.Keys, material => Assert.True(have.ContainsKey(material), material));
        Assert.Equal(
            ["concrete block", "crate", "garden twine", "ground anchor", "lidded tub", "padded box", "ratchet strap", "stake 6 ft"],
            need.Where(pair => pair.Value > have[pair.Key] + 1e-9).Select(pair => pair.Key).Order());
        Assert.True(book.Jobs.Where(job => job.StoreId == "garage").Sum(job => job.StoreFloorM2) > book.Stores.Single(store => store.Id == "garage").FloorM2);
    }

    [Fact]
    public void SaltbushCourt_IsSmallMetricAndSouthern()
    {
        var book = Garden("saltbush-court");

        Assert.Equal((UnitSystem.Metric, 8), (book.Units, book.Items.Count));
        Assert.All(book.Sites, site => Assert.True(site.At.LatDeg < 0));
    }
}
