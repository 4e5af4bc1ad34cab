using StormClock.Service.Books;
using StormClock.Service.Commands;
using StormClock.Service.Tests.Books;
using StormClock.Service.Tests.Practice;

namespace StormClock.Service.Tests.Commands;

public sealed class ItemsCommandTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("items").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private string In(string name) => Path.Combine(folder, name);

    [Fact]
    public async Task Items_OutAndInAgain_AreTheSameItems()
    {
        var practice = ConfigFiles.PracticeGardens.Single(path => path.Contains("saltbush"));

        Assert.Equal(ExitCode.Good, await CommandLine.RunAsync(["items", "--out", In("plants.csv"), "--garden", practice]));

        var text = File.ReadAllText(practice);
        File.WriteAllText(In("court.yaml"), text[..text.IndexOf("\nitems:", StringComparison.Ordinal)] + "\nitems_file: plants.csv\n");
        var (before, after) = (GardenFiles.Read(practice).Value!, GardenFiles.Read(In("court.yaml")).Value!);
        Assert.Equal(
            before.Items.Select(item => (item.Id, item.Name, item.Kind, item.AreaId, item.Count, item.ValueUsd, item.Written)),
            after.Items.Select(item => (item.Id, item.Name, item.Kind, item.AreaId, item.Count, item.ValueUsd, item.Written)));
        Assert.Equal(before.Jobs.Select(job => (job.Id, job.Minutes, job.People)), after.Jobs.Select(job => (job.Id, job.Minutes, job.People)));
    }

    [Fact]
    public async Task Template_BesideABook_IsReadAndItsFaultsCarryItsName()
    {
        Assert.Equal(ExitCode.Good, await CommandLine.RunAsync(["items", "--template", In("plants.csv")]));
        var book = SampleBook.Good + "\nitems_file: plants.csv\n";
        File.WriteAllText(In("quay.yaml"), book);

        Assert.Equal(
            [$"{In("plants.csv")}:2: item 'bay-tubs' names the area 'yard'", $"{In("plants.csv")}:3: item 'tomato-row' names the area 'yard'", $"{In("plants.csv")}:4: item 'stone-trough' names the area 'yard'"],
            GardenFiles.Read(In("quay.yaml")).Faults.Select(fault => fault.ToldOf(In("quay.yaml"))).Select(told => told[..told.IndexOf(", which", StringComparison.Ordinal)]));

        File.WriteAllText(In("quay.yaml"), book.Replace("{id: rows,", "{id: yard, name: Yard, site: field}\n  - {id: rows,"));
        Assert.Equal(5, GardenFiles.Read(In("quay.yaml")).Value!.Items.Count);
    }

    [Fact]
    public async Task Items_OverAFileThatIsThere_LeaveItAlone()
    {
        File.WriteAllText(In("plants.csv"), "mine");

        Assert.Equal(ExitCode.BadInput, await CommandLine.RunAsync(["items", "--template", In("plants.csv")]));

        Assert.Equal("mine", File.ReadAllText(In("plants.csv")));
    }

    [Fact]
    public async Task Items_OfTheOnlyGarden_NeedNoName()
    {
        Directory.CreateDirectory(In("gardens"));
        File.WriteAllText(In("gardens/quay.yaml"), SampleBook.Good);

        Assert.Equal(ExitCode.Good, await CommandLine.RunAsync(["items", "--out", In("plants.csv"), "--config", folder]));
        Assert.Equal(3, File.ReadAllLines(In("plants.csv")).Length);

        File.WriteAllText(In("gardens/other.yaml"), SampleBook.Good.Replace("id: quay", "id: other"));
        Assert.Equal(ExitCode.BadInput, await CommandLine.RunAsync(["items", "--out", In("more.csv"), "--config", folder]));
        Assert.False(File.Exists(In("more.csv")));
    }

    public static TheoryData<string[], int> Wrong => new()
    {
        { ["items"], ExitCode.Usage },
        { ["items", "--out", "a.csv", "--template", "b.csv"], ExitCode.Usage },
        { ["items", "--template", "b.csv", "--garden", "c.yaml"], ExitCode.Usage },
        { ["items", "--out", "a.csv", "--garden", "none.yaml"], ExitCode.BadInput },
        { ["items", "--template", "none/at/all/b.csv"], ExitCode.OutsideTrouble },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public async Task Items_Wrong_SayHow(string[] words, int exit) =>
        Assert.Equal(exit, await CommandLine.RunAsync([.. words.Select(word => word.Contains('.') ? In(word) : word)]));
}
