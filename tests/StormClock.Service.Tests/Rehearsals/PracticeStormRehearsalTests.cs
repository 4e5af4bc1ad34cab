using StormClock.Core.Stages;
using StormClock.Service.Rehearsal;
using StormClock.Service.Tests.Practice;

namespace StormClock.Service.Tests.Rehearsals;

/// <summary>The practice storm through the real host: what a new user sees first, and what runs without any other data.</summary>
public class PracticeStormRehearsalTests
{
    private static readonly string Storm = Path.Combine(ConfigFiles.Folder, "practice", "storm");

    [Fact]
    public async Task Rehearsal_PromptPeople_GoesThroughTheStagesToTheRecheck()
    {
        var storm = await Rehearsed.PlayAsync(Storm, at: null);

        var stages = storm.Events.Where(entry => entry.Kind is "stage" or "recheck").Select(entry => entry.Stage!.Value).ToList();
        Assert.Equal(stages.Order(), stages);
        Assert.Equal(Stage.GardenClosed, stages[^2]);
        Assert.Equal(Stage.Recheck, stages[^1]);
        Assert.True(storm.Events.Count(entry => entry.Kind == "done") >= 20, "most jobs are reported by their links");
        Assert.Equal(storm.Sent.Count, storm.Sent.Select(sent => sent.Key).Distinct().Count());
        var closed = storm.First(Stage.GardenClosed)!.Value;
        var recheck = storm.FirstOf("recheck")!.Value;
        Assert.DoesNotContain(storm.Sent, sent => sent.At >= closed && sent.At < recheck && sent.Jobs?.Count > 0);
    }

    [Fact]
    public async Task Rehearsal_NobodyAnswers_ReportsNothingDoneAndStillCloses()
    {
        var storm = await Rehearsed.PlayAsync(Storm, at: null, Acks.None);
        Assert.DoesNotContain(storm.Events, entry => entry.Kind == "done");
        Assert.NotNull(storm.First(Stage.GardenClosed));
        Assert.NotNull(storm.FirstOf("recheck"));
    }

    /// <summary>A reported job leaves the next plan; a job nobody reports stays in it.</summary>
    [Fact]
    public async Task Rehearsal_JobReportedDone_IsNotAskedForAgain()
    {
        var storm = await Rehearsed.PlayAsync(Storm, at: null, Acks.Late);
        var done = new HashSet<string>();
        foreach (var entry in storm.Events)
        {
            if (entry.Kind == "done") done.UnionWith(entry.Jobs!);
            if (entry.Kind == "plan") Assert.DoesNotContain(entry.Jobs!, done.Contains);
        }

        Assert.NotEmpty(done);
    }

    [Fact]
    public async Task Rehearsal_Twice_IsTheSameToTheLastEvent()
    {
        var first = await Rehearsed.PlayAsync(Storm, at: null);
        var second = await Rehearsed.PlayAsync(Storm, at: null);
        Assert.Equal(first.Events.Select(Told), second.Events.Select(Told));

        static string Told(Desk.JournalEntry entry) => $"{entry with { Jobs = null }} {string.Join(' ', entry.Jobs ?? [])}";
    }

    /// <summary>Six a day and person in any 24 hours, orders, Garden closed and late work apart; late work at most every two hours; nothing twice.</summary>
    [Theory]
    [InlineData("Prompt")]
    [InlineData("Late")]
    [InlineData("None")]
    public async Task Rehearsal_WhateverPeopleAnswer_KeepsMessagesFew(string acks)
    {
        var storm = await Rehearsed.PlayAsync(Storm, at: null, Enum.Parse<Acks>(acks));
        Assert.Equal(storm.Sent.Count, storm.Sent.Select(sent => sent.Key).Distinct().Count());
        Assert.DoesNotContain(storm.Events, entry => entry.Kind == "missed");
        foreach (var person in storm.Sent.GroupBy(sent => sent.To))
        {
            var counted = person.Where(sent => sent.Reason is not ("Leave" or "OrderLifted" or "Late" or "NotIn") && !sent.Key!.Contains("|GardenClosed-", StringComparison.Ordinal)).Select(sent => sent.At).ToList();
            Assert.All(counted, at => Assert.InRange(counted.Count(other => other <= at && at - other < Duration.FromHours(24)), 1, 6));
            var late = person.Where(sent => sent.Reason == "Late").Select(sent => sent.At).ToList();
            Assert.All(late.Zip(late.Skip(1)), pair => Assert.True(pair.Second - pair.First >= Duration.FromHours(2)));
            Assert.Equal(acks == "Prompt" ? 0 : 1, person.Count(sent => sent.Reason == "NotIn"));
        }
    }
}
