using StormClock.Core.Advisories;
using StormClock.Core.Formats.Notes;
using StormClock.Service.Tests.Books;
using StormClock.Service.Tests.EndToEnd;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Commands;

/// <summary>Notes as somebody enters them: what makes things later wants a word more.</summary>
public sealed class NoteCommandTests : IDisposable
{
    private readonly TempFolder folder = new();

    public NoteCommandTests()
    {
        Directory.CreateDirectory(folder.File("config/gardens"));
        File.WriteAllText(folder.File("config/gardens/quay.yaml"), SampleBook.Good);
    }

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task AllClear_WhileNotesStand_WantsAYesAndNamesThem()
    {
        await NoteAsync("10:00", "wind", "--from", "2027-09-12T20:00Z", "--gust", "60 mph", "--by", "Ada");

        var refused = await NoteAsync("11:00", "all-clear");
        Assert.Equal(1, refused.Exit);
        Assert.Equal("this would take back the wind note by Ada of 2027-09-12 10:00 UTC, and things may become later; add --yes if it is meant so", Assert.Single(refused.ErrorLines));
        Assert.Single(Standing("11:00"));

        Assert.Equal(0, (await NoteAsync("11:00", "all-clear", "--yes")).Exit);
        Assert.Empty(Standing("11:30"));
    }

    [Fact]
    public async Task AllClear_WhileNoneStands_NeedsNoYes()
    {
        Assert.Equal(0, (await NoteAsync("10:00", "all-clear")).Exit);
        await NoteAsync("11:00", "wind", "--from", "2027-09-12T20:00Z", "--gust", "60 mph", "--expires", "2027-09-12T11:30Z");
        Assert.Equal(0, (await NoteAsync("12:00", "all-clear")).Exit);
    }

    /// <summary>Each later, lighter or lower than the one before it.</summary>
    [Theory]
    [InlineData("wind --from 2027-09-12T20:00Z --gust 60mph", "wind --from 2027-09-12T22:00Z --gust 60mph", "wind --from 2027-09-12T20:00Z --gust 50mph")]
    [InlineData("rain --from 2027-09-12T20:00Z --day 6in --hour 2in", "rain --from 2027-09-12T20:00Z --day 5in --hour 2in", "rain --from 2027-09-12T20:00Z --day 6in")]
    [InlineData("water --level 2_m_NAVD88", "water --level 1.5_m_NAVD88", "water --level 1.9_m_NAVD88")]
    [InlineData("leave-by 2027-09-12T18:00Z", "leave-by 2027-09-12T19:00Z", "leave-by 2027-09-12T20:00Z")]
    public async Task Note_ThatWouldEase_TakesTheOthersPlaceOnlyWithAYes(string first, string second, string third)
    {
        await NoteAsync("10:00", Words(first));

        var beside = await NoteAsync("10:30", Words(second));
        Assert.Equal(0, beside.Exit);
        Assert.Contains("still stands, and the more careful of them counts", beside.Output);
        Assert.Equal(2, Standing("10:40").Count);

        var instead = await NoteAsync("11:00", [.. Words(third), "--yes"]);
        Assert.Equal(0, instead.Exit);
        Assert.Contains("It takes the place of", instead.Output);
        Assert.Equal("11:00", $"{Assert.Single(Standing("11:30")).Made:HH:mm}");
    }

    [Fact]
    public async Task Note_Earlier_ActsAtOnceWithoutAWord()
    {
        await NoteAsync("10:00", "leave-by", "2027-09-12T18:00Z");
        var earlier = await NoteAsync("10:30", "leave-by", "2027-09-12T16:00Z");
        Assert.DoesNotContain("--yes", earlier.Output);
        Assert.Equal(2, Standing("10:40").Count);
    }

    /// <summary>A note that names an hour still holds in it, also where nobody says until when.</summary>
    [Fact]
    public async Task Wind_FarAhead_HoldsPastTheHourItNames()
    {
        await NoteAsync("10:00", "wind", "--from", "2027-09-12T23:00Z", "--gust", "60 mph");
        Assert.Single(Standing("23:30"));

        var tooFar = await NoteAsync("10:00", "wind", "--from", "2027-09-17T05:00Z", "--gust", "60 mph");
        Assert.Equal(1, tooFar.Exit);
        Assert.StartsWith("--from: a note holds at most five days", Assert.Single(tooFar.ErrorLines));
    }

    [Theory]
    [InlineData("2027-09-12T09:00Z", "--expires: is past")]
    [InlineData("2027-09-18T10:00Z", "--expires: is more than five days ahead")]
    [InlineData("2027-09-12T17:00Z", "--expires: is before everybody leaves")]
    [InlineData("tomorrow", "--expires: 'tomorrow' is not a time")]
    public async Task Expires_ThatCannotBe_IsRefused(string expires, string told)
    {
        var result = await NoteAsync("10:00", "leave-by", "2027-09-12T18:00Z", "--expires", expires);
        Assert.Equal(1, result.Exit);
        Assert.StartsWith(told, Assert.Single(result.ErrorLines));
    }

    [Fact]
    public async Task Expires_SetByHand_IsKept()
    {
        await NoteAsync("10:00", "water", "--level", "2 m NAVD88", "--expires", "2027-09-14T10:00Z");
        Assert.Single(Standing("23:59"));
        Assert.Equal(Instant.FromUtc(2027, 9, 14, 10, 0), Assert.Single(Standing("23:59")).Expires);
    }

    private static string[] Words(string line) => [.. line.Split(' ').Select(word => word.Replace('_', ' '))];

    private Task<CommandResult> NoteAsync(string clock, params string[] words) =>
        CommandRun.RunAsync(["note", .. words, "--config", folder.File("config"), "--data", folder.File("data"), "--now", $"2027-09-12T{clock}Z"]);

    private IReadOnlyList<Note> Standing(string clock)
    {
        var now = NodaTime.Text.InstantPattern.General.Parse($"2027-09-12T{clock}:00Z").Value;
        var ledger = Directory.EnumerateFiles(folder.File("data/notes"), "*.json").Select(file => NoteReader.Read(File.ReadAllBytes(file)).Value!)
            .Aggregate(AdvisoryLedger.Empty, (all, note) => all.With(note, note.Made));
        return ledger.Notes(now, "quay");
    }
}
