using StormClock.Core.Garden;
using StormClock.Service.Books;

namespace StormClock.Service.Tests.Books;

/// <summary>Jobs that come with a kind, and what a written job may leave out.</summary>
public class UsualJobTests
{
    /// <summary>Three drums: fill 5 + 2 x 4.5 = 14 min; strap 12 + 2 x 8 = 28 min by two, two straps and 1.5 m of cord each.</summary>
    [Fact]
    public void Read_NoJobsWritten_TakesTheKindsOwn()
    {
        var item = MadeKinds.Item("kind: drum\ncount: 3\nendangers: [car]");

        Assert.True(item.JobsTypical);
        Assert.Equal(["thing/fill", "thing/strap"], item.Jobs.Select(job => job.Id));
        Assert.All(item.Jobs, job => Assert.True(job is { Typical: true, ValueStated: false, LeftOut: JobParts.None, ItemId: "thing", Value: 90, HazardToOthers: 270 }));
        var (fill, strap) = (item.Jobs[0], item.Jobs[1]);
        Assert.Equal((14, 1, WorkClass.Ground, null, null), (fill.Minutes, fill.People, fill.Class, fill.Undo, fill.Caution));
        Assert.Equal((28, 2, WorkClass.Carry, JobKind.Untie), (strap.Minutes, strap.People, strap.Class, strap.Undo));
        Assert.Equal(["thing/fill"], strap.After);
        Assert.Equal([new MaterialNeed("strap", 6, "each"), new MaterialNeed("cord", 4.5, "m")], strap.Materials);
        Assert.Equal(("the rim is sharp", "leave it full and lay its lid indoors"), (strap.Caution, strap.Fallback));
    }

    [Theory]
    [InlineData("jobs: none")]
    [InlineData("jobs: []")]
    public void Read_NoneWritten_MeansNothingToBeDone(string jobs)
    {
        var item = MadeKinds.Item($"kind: drum\ncount: 3\n{jobs}");

        Assert.Empty(item.Jobs);
        Assert.False(item.JobsTypical);
    }

    [Fact]
    public void Read_JobThatLeavesOutWhatIsUsual_TakesItFromTheKind()
    {
        var job = Assert.Single(MadeKinds.Item("kind: drum\ncount: 3\njobs:\n  - {kind: strap}").Jobs);

        Assert.Equal((28, 2, WorkClass.Carry, "the rim is sharp"), (job.Minutes, job.People, job.Class, job.Caution));
        Assert.Equal([6, 4.5], job.Materials.Select(need => need.Quantity));
        Assert.Equal(JobParts.Minutes | JobParts.People | JobParts.Class | JobParts.Materials | JobParts.Caution | JobParts.Undo | JobParts.LastRound | JobParts.PartKg, job.LeftOut);
        Assert.False(job.Typical);
        Assert.Empty(job.After);
    }

    [Fact]
    public void Read_JobThatSaysAll_OutranksTheKind()
    {
        var job = Assert.Single(MadeKinds.Item(
            "kind: drum\ncount: 3\njobs:\n  - {kind: strap, minutes: 9, people: 1, class: ground, materials: [], caution: wasps under the rim, value: 90, undo: none, last_round: true, part_kg: 7.5}").Jobs);

        Assert.Equal((9, 1, WorkClass.Ground, "wasps under the rim", true, 7.5), (job.Minutes, job.People, job.Class, job.Caution, job.ValueStated, job.PartKg));
        Assert.Empty(job.Materials);
        Assert.Equal(JobParts.None, job.LeftOut);
    }

    [Fact]
    public void Read_JobThatTheKindDoesNotKnow_StillNeedsItsMinutes()
    {
        var text = MadeKinds.Book("kind: drum\ncount: 3\njobs:\n  - {kind: move}");

        Assert.Contains("job of item 'thing' 'move' has no 'minutes'", Assert.Single(GardenReader.Read(text, "quay.yaml", null, MadeKinds.Rich).Faults).Reason);
    }

    /// <summary>The book lists one person, who does not go up a ladder alone; the plan leaves such work out and says so.</summary>
    [Theory]
    [InlineData("kind: drum\ncount: 1")]
    [InlineData("kind: drum\ncount: 1\njobs:\n  - {kind: strap}")]
    [InlineData("kind: lamp\ncount: 1")]
    [InlineData("kind: lamp\ncount: 1\njobs:\n  - {kind: take_down}")]
    public void Read_UsualWorkThatNeedsMoreHandsThanThereAre_IsNoFaultOfTheGardener(string lines) => Assert.NotEmpty(MadeKinds.Item(lines).Jobs);

    [Fact]
    public void Read_WrittenWorkThatNeedsMoreHandsThanThereAre_IsAFault()
    {
        var text = MadeKinds.Book("kind: drum\ncount: 1\njobs:\n  - {kind: strap, people: 2}");

        Assert.Contains("needs 2 people", Assert.Single(GardenReader.Read(text, "quay.yaml", null, MadeKinds.Rich).Faults).Reason);
    }

    [Fact]
    public void Read_JobAfterAUsualOneOfAnotherItem_IsKnown()
    {
        var text = MadeKinds.Book("kind: drum\ncount: 1") + "\n  - {id: path, kind: other, area: porch, count: 1, jobs: [{kind: move, minutes: 5, after: [thing/fill]}]}\n";

        Assert.True(GardenReader.Read(text, "quay.yaml", null, MadeKinds.Rich).IsGood);
        Assert.Contains("the job 'thing/pick'", Assert.Single(GardenReader.Read(text.Replace("thing/fill", "thing/pick"), "quay.yaml", null, MadeKinds.Rich).Faults).Reason);
    }

    /// <summary>More drums than a day has minutes: the longest that a job may be written.</summary>
    [Fact]
    public void Read_EndlessLine_StaysWithinADay() => Assert.Equal([1440, 1440], MadeKinds.Item("kind: drum\ncount: 5000").Jobs.Select(job => job.Minutes));
}
