using System.Text.Json;
using CsCheck;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Books.Csv;

namespace StormClock.Service.Tests.Books.Csv;

public class ItemTableWriterTests
{
    /// <summary>All that fits into a table comes back from it.</summary>
    [Fact]
    public void Write_AnyItems_ReadBackTheSame()
    {
        var like = SampleBook.Read(SampleBook.Good);
        Gen.Select(MadeBooks.Item.Array[1, 4], MadeBooks.Job.Array[0, 2], Gen.Bool).Sample(
            (made, jobs, typical) =>
            {
                var items = made.Select((item, i) => item with { Id = $"thing-{i}", JobsTypical = typical, Jobs = typical ? [] : [.. jobs.Select(Fitting)] }).ToList();
                var read = ItemTableTests.Good(ItemTableWriter.Write(like with { Items = items }));
                Assert.Equal(items.Select(Written), read.Items.Select(Written));
                Assert.Equal(Whole(read), Whole(ItemTableTests.Good(ItemTableWriter.Write(read))));
                Assert.Empty(ItemTableWriter.Lost(read));
            },
            iter: 1000);
    }

    private static Job Fitting(Job job) => job with
    {
        Value = 0, ValueStated = false, Caution = null, Fallback = null,
        LeftOut = JobParts.Class | JobParts.Materials | JobParts.Caution | JobParts.Undo | JobParts.LastRound | JobParts.PartKg,
    };

    private static string Written(Item item) => JsonSerializer.Serialize(new
    {
        item.Id, item.Name, item.Kind, item.Count, item.Endangers, item.Written, item.ValueTypical, Value = item.ValueTypical ? 0 : item.ValueUsd,
        Harvest = item.Harvest is { ValueTypical: true } harvest ? harvest with { ValueUsd = 0 } : item.Harvest,
        item.JobsTypical,
        Jobs = item.JobsTypical ? null : item.Jobs.Select(job => new { job.Kind, job.Minutes, job.People, job.LeftOut }),
    });

    private static string Whole(GardenBook book) => JsonSerializer.Serialize(book.Items);

    [Fact]
    public void Lost_WhatATableCannotHold_IsNamedByItem()
    {
        var book = SampleBook.Read(SampleBook.Good.Replace("[neighbour_window]", "[\"our car\"]"));

        Assert.Equal(
            ["fig-pots: blanks in 'endangers' become underscores, materials of tie, after, store, fallback of move", "bean-rows: after of bundle"],
            ItemTableWriter.Lost(book));
    }

    [Fact]
    public void Template_InABookOfOnesOwn_ReadsWithoutFault()
    {
        var book = ItemTableTests.Good(ItemTemplate.Text(), ItemTableTests.OnlyTable.Replace("{id: porch, name: Porch,", "{id: yard, name: Yard,"));

        Assert.Equal(["bay-tubs", "tomato-row", "stone-trough"], book.Items.Select(item => item.Id));
        Assert.StartsWith(string.Join(',', GardenKeys.Item), ItemTemplate.Text());
    }
}
