using System.Text;
using CsCheck;
using StormClock.Service.Calendars;
using StormClock.Service.Messages;
using StormClock.Service.Tests.Messages;

namespace StormClock.Service.Tests.Calendars;

public class IcsFormTests
{
    private static readonly DateTimeZone Zone = QuayEnd.MainWork.Zone;

    private static readonly CalendarEvent Lemon = new(
        "e-1@stormclock.invalid", "ada", "lemon/weigh_down", "Weigh down: potted lemon (4)", "Home, Terrace; by the wall",
        QuayEnd.Hours(2.5), QuayEnd.Hours(2.5) + Duration.FromMinutes(40), QuayEnd.Hours(9.75), 3, QuayEnd.Now, false, true);

    private static readonly CalendarEvent Beans = Lemon with
    {
        Uid = "e-2@stormclock.invalid", JobId = "beans/pick", Summary = "Pick: Stangenbohnen, grüne und überreife zuerst – größte Körbe \\ 豆 🫘🫘🫘🫘🫘🫘🫘🫘🫘🫘🫘",
        Start = QuayEnd.Hours(4), End = QuayEnd.Hours(5.25), Sequence = 1, TakenBack = true,
    };

    [Fact]
    public void Letter_TwoEvents_ReadsAsReviewed() =>
        Golden.Check("letter.expected.ics", IcsForm.ForLetter([Beans, Lemon], Zone, Speeches.Us).ReplaceLineEndings("\n"), "Calendars");

    [Fact]
    public void Feed_TwoEvents_ReadsAsReviewed() =>
        Golden.Check("feed.expected.ics", IcsForm.ForFeed([Beans, Lemon], "Quay End", Zone, Speeches.Us).ReplaceLineEndings("\n"), "Calendars");

    [Fact]
    public void Letter_Events_ComeBackWhole()
    {
        var read = CheckedCalendar.Read(IcsForm.ForLetter([Beans, Lemon], Zone, Speeches.Us));
        Assert.Equal("PUBLISH", read.Method);
        Assert.Equal(["CONFIRMED", "CANCELLED"], read.Events.Select(told => told.Status));
        Assert.Equal(
            (Lemon.Uid, 3, Lemon.ChangedAt, Lemon.Start, Lemon.End, Lemon.Summary, Lemon.Location),
            (read.Events[0].Uid, read.Events[0].Sequence, read.Events[0].Stamp, read.Events[0].Start, read.Events[0].End, read.Events[0].Summary, read.Events[0].Location));
        Assert.StartsWith("Last start Mon 16:15 EDT.\n", read.Events[0].Description, StringComparison.Ordinal);
        Assert.Equal(Beans.Summary, read.Events[1].Summary);
        Assert.Contains("Do not go out", read.Events[1].Description, StringComparison.Ordinal);
    }

    /// <summary>A reader that is not ours finds the same events in letters and feeds, in either language.</summary>
    [Fact]
    public void Calendars_ReadByAnotherLibrary_HoldTheSameEvents() =>
        Assert.All(
            (string[])[
                IcsForm.ForLetter([Beans, Lemon], Zone, Speeches.Us), IcsForm.ForLetter([Beans, Lemon], Zone, Speeches.Spanish),
                IcsForm.ForFeed([Beans, Lemon], "La Caleta, Ñ; Sur", Zone, Speeches.Spanish),
            ],
            text =>
            {
                var events = Ical.Net.Calendar.Load(text)!.Events.OrderBy(told => told.Uid).ToList();
                Assert.Equal([Lemon.Uid, Beans.Uid], events.Select(told => told.Uid));
                Assert.Equal(["CONFIRMED", "CANCELLED"], events.Select(told => told.Status));
                Assert.All(events.Zip((CalendarEvent[])[Lemon, Beans]), pair =>
                {
                    Assert.Equal((pair.Second.Summary, pair.Second.Location, pair.Second.Sequence), (pair.First.Summary, pair.First.Location, pair.First.Sequence));
                    Assert.Equal((pair.Second.Start.ToDateTimeUtc(), pair.Second.End.ToDateTimeUtc()), (pair.First.DtStart!.AsUtc, pair.First.DtEnd!.AsUtc));
                    Assert.False(string.IsNullOrWhiteSpace(pair.First.Description));
                });
            });

    [Fact]
    public void Letter_InSpanish_SaysTheLastStartAndWhatOutranksIt()
    {
        var read = CheckedCalendar.Read(IcsForm.ForLetter([Beans, Lemon], Zone, Speeches.Spanish));
        Assert.Equal("Empiece a más tardar el lunes 4:15 p.m. EDT.\nLos mensajes más nuevos valen más que esta entrada, y las órdenes oficiales más que todos.", read.Events[0].Description);
        Assert.Contains("No salga a hacerlo", read.Events[1].Description, StringComparison.Ordinal);
    }

    /// <summary>The strict reader bites: what breaks the rules is not let through.</summary>
    [Theory]
    [InlineData("\r\n", "\n")]
    [InlineData("SUMMARY:", "SUMMARY:a;b")]
    [InlineData("SUMMARY:", "SUMMARY:a\\x")]
    [InlineData("VERSION:2.0\r\n", "")]
    [InlineData("UID:", "UID:aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa")]
    [InlineData("END:VEVENT", "BEGIN:VALARM\r\nEND:VALARM\r\nEND:VEVENT")]
    [InlineData("SEQUENCE:3", "SEQUENCE:-3")]
    public void Reader_RuleBroken_Fails(string part, string spoilt)
    {
        var text = IcsForm.ForLetter([Lemon], Zone, Speeches.Us);
        Assert.Contains(part, text, StringComparison.Ordinal);
        Assert.ThrowsAny<Exception>(() => CheckedCalendar.Read(text.Replace(part, spoilt, StringComparison.Ordinal)));
    }

    /// <summary>Any names, of one to four octets a character, folded anywhere: every rule of the lines holds and the words come back.</summary>
    [Fact]
    public void Text_AnyNames_FoldAndComeBack()
    {
        string[] pieces = ["a", "ß", "–", "豆", "🫘", ";", ",", "\\", "\\n", ":", "\"", " ", "=", "END:VEVENT", "\u0301"];
        var names = Gen.Int[0, pieces.Length - 1].Array[0, 90].Select(picks => "x" + string.Concat(picks.Select(pick => pieces[pick])) + "x");
        Gen.Select(names, names).Sample((summary, location) =>
        {
            var read = Assert.Single(CheckedCalendar.Read(IcsForm.ForLetter([Lemon with { Summary = summary, Location = location }], Zone, Speeches.Us)).Events);
            Assert.Equal((summary, location), (read.Summary, read.Location));
        });
    }

    [Fact]
    public void Text_LineBreaksInANameOfTheBook_AddNoProperty()
    {
        const string name = "x\r\nEND:VEVENT\nATTACH:y\u2028z\0";
        var lines = CheckedCalendar.Read(IcsForm.ForFeed([Lemon with { Summary = Plain.Line(name) }], name, Zone, Speeches.Us)).Lines;
        Assert.Equal(CheckedCalendar.Read(IcsForm.ForFeed([Lemon], "n", Zone, Speeches.Us)).Lines.Count, lines.Count);
    }

    [Fact]
    public void Feed_NoEvents_IsStillACalendar() => Assert.Empty(CheckedCalendar.Read(IcsForm.ForFeed([], "Quay End", Zone, Speeches.Us)).Events);

    /// <summary>Long lines that are all of one kind of character are as full as they can be.</summary>
    [Theory]
    [InlineData("a", 75)]
    [InlineData("ß", 75)]
    [InlineData("豆", 73)]
    [InlineData("🫘", 73)]
    public void Line_Full_HasAsManyOctetsAsFit(string letter, int longest)
    {
        var text = IcsForm.ForLetter([Lemon with { Summary = string.Concat(Enumerable.Repeat(letter, 200)) }], Zone, Speeches.Us);
        var folded = text.Split("\r\n").Where(line => line.StartsWith(' ') && line.Contains(letter, StringComparison.Ordinal)).Select(Encoding.UTF8.GetByteCount).ToList();
        Assert.Equal(longest, folded.Max());
    }
}
