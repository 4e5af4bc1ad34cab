using System.Text.RegularExpressions;
using StormClock.Core.Garden;
using StormClock.Service.Desk;
using StormClock.Service.Web;
using StormClock.Service.Web.Garden;

namespace StormClock.Service.Tests.Visits;

public partial class GardenWorkTests
{
    /// <summary>The parts of a list, one after the other, are the list: nothing is left out and nothing comes twice.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(7)]
    [InlineData(1000)]
    public void Part_OneAfterTheOther_GivesTheWhole(int count)
    {
        var jobs = GardenWork.Of(GardenHost.Garden, null, [], null).Open;
        var work = new GardenWork(jobs.Take(5).ToList(), jobs.Skip(5).Take(3).ToList(), jobs.Skip(8).Take(6).ToList(), jobs.Skip(14).ToList());
        List<LinkJob> whole = [.. work.Next, .. work.LeftOut, .. work.Answered, .. work.Open];

        var parts = Enumerable.Range(0, (whole.Count + count - 1) / count).Select(part => work.Part(part * count, count)).ToList();

        Assert.All(parts, part => Assert.InRange(part.Count, 1, count));
        Assert.Equal(whole, parts.SelectMany(part => part.Next.Concat(part.LeftOut).Concat(part.Answered).Concat(part.Open)));
    }

    [Fact]
    public async Task Jobs_OfAVeryLargeGarden_ComeInPagesThatLeadOnAndBack()
    {
        var garden = GardenHost.Garden;
        var pot = garden.Items.First(item => item.Jobs.Count == 1 && item.Jobs[0].After.Count == 0);
        Item Another(int number) => pot with { Id = $"more-{number}", Jobs = [pot.Jobs[0] with { Id = $"more-{number}/move", ItemId = $"more-{number}" }] };
        await using var host = await GardenHost.StartAsync(shelf: new GardenShelf([garden with { Items = [.. garden.Items, .. Enumerable.Range(0, 300).Select(Another)] }]));
        using var browser = host.NewBrowser();

        var first = await GardenHost.ReadAsync(browser, $"g/{garden.Id}/jobs");
        var second = await GardenHost.ReadAsync(browser, $"g/{garden.Id}/{Further().Match(first).Groups[1].Value}");

        Assert.Equal(250, Job().Count(first));
        Assert.InRange(Job().Count(second), 50, 250);
        Assert.Empty(Tokens(first).Intersect(Tokens(second)));
        Assert.Contains("href=\"jobs?from=0\"", second, StringComparison.Ordinal);
        foreach (var from in new[] { "3", "-1", "999999", "x", "9999999999999" })
        {
            Assert.Contains("Jobs 1 to 250 of", await GardenHost.ReadAsync(browser, $"g/{garden.Id}/jobs?from={from}"), StringComparison.Ordinal);
        }
    }

    private static HashSet<string> Tokens(string page) => [.. Job().Matches(page).Select(match => match.Groups[1].Value)];

    [GeneratedRegex("<li id=\"job-([^\"]+)\"")]
    private static partial Regex Job();

    [GeneratedRegex("href=\"(jobs\\?from=250)\"")]
    private static partial Regex Further();
}
