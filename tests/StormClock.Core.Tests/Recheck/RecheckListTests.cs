using StormClock.Core.Garden;
using StormClock.Core.Recheck;
using StormClock.Core.Reminders;
using StormClock.Core.Tests.Garden;

namespace StormClock.Core.Tests.Recheck;

/// <summary>What to look at and undo when it is over; common practice, no source for the order beyond trade.md 7.</summary>
public class RecheckListTests
{
    private static readonly Instant Now = Instant.FromUtc(2027, 9, 24, 17, 0);

    private static readonly GardenBook Book = Gardens.With(
        [Gardens.Person("ada")],
        Gardens.Job("hang", 20, WorkClass.Ladder) with { Kind = JobKind.TakeDown, Undo = JobKind.PutBack, Caution = "One foots the ladder." },
        Gardens.Job("off", 5) with { Kind = JobKind.SwitchOff, Undo = JobKind.Check });

    private static Dictionary<string, JobState> Done(params string[] tokens) => tokens.ToDictionary(token => token, token => new JobState(token, JobProgress.Done, Now, "ada"));

    private static string After(Dictionary<string, JobState> states) => string.Join(' ', RecheckList.After(Book, states).Select(line => line.Token));

    [Fact]
    public void After_WorkDone_LooksFirstThenUndoesIt() => Assert.Equal("look:item look:far-item undo:hang", After(Done("hang")));

    /// <summary>To check the thing is asked by the look already.</summary>
    [Fact]
    public void After_UndoingIsACheck_IsAskedOnce() => Assert.Equal("look:item look:far-item", After(Done("off")));

    [Fact]
    public void After_AnsweredDone_IsNotAskedAgain() => Assert.Equal("look:far-item", After(Done("hang", "look:item", "undo:hang")));

    /// <summary>Undoing is work of the same class, with the same thing to beware of.</summary>
    [Fact]
    public void Undo_LadderWork_KeepsItsClassAndCaution()
    {
        var line = BriefLines.Find(Book, "undo:hang")!;
        Assert.Equal((JobKind.PutBack, WorkClass.Ladder), (line.Kind, line.Class));
        Assert.Equal(["One foots the ladder."], line.TakeCare);
    }
}
