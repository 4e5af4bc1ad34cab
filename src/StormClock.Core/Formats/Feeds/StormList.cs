using System.Text.Json;
using StormClock.Core.Formats.Cap;

namespace StormClock.Core.Formats.Feeds;

/// <summary>Reads the cyclone centre's list of current storms: links to the products of each.</summary>
internal static class StormList
{
    /// <summary>The products that can be read; the others are texts and pictures for people.</summary>
    private static readonly string[] Products = ["forecastAdvisory", "windSpeedProbabilities", "publicAdvisory"];

    public static ReadResult<FeedIndex> Read(ReadOnlyMemory<byte> bytes)
    {
        try
        {
            using var json = JsonDocument.Parse(JsonText.WithoutMark(bytes));
            var storms = json.RootElement.Items("activeStorms").ToList();
            return new FeedIndex("Current storms", storms.Select(storm => CapTime.Parse(storm.Text("lastUpdate"))).Max(), [.. storms.SelectMany(Entries)]);
        }
        catch (Exception error) when (JsonText.IsFaultOfBytes(error))
        {
            return JsonText.FaultOf(error);
        }
    }

    private static IEnumerable<FeedEntry> Entries(JsonElement storm) =>
        from product in Products
        let told = storm.Member(product)
        where told is not null
        let link = FeedLink.Parse(told.Value.Text("url"))
        where link is not null
        let updated = CapTime.Parse(told.Value.Text("fileUpdateTime")) ?? CapTime.Parse(told.Value.Text("issuance"))
        let number = told.Value.Text("advNum")
        select new FeedEntry($"{storm.Text("id")}/{product}/{number} {updated}", $"{storm.Text("name")} {product} {number}", default, link, updated);
}
