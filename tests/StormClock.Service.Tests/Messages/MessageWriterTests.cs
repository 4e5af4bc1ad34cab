using System.Net;
using System.Text.RegularExpressions;
using CsCheck;
using StormClock.Core.Acknowledgements;
using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Core.Stages;
using StormClock.Service.Messages;
using StormClock.Service.Tests.Wording;

namespace StormClock.Service.Tests.Messages;

public partial class MessageWriterTests
{
    public static TheoryData<string> Kinds => [.. QuayEnd.Briefs.Keys];

    [Theory, MemberData(nameof(Kinds))]
    public void Write_EachKind_ReadsAsReviewed(string kind)
    {
        var message = Write(kind);
        Golden.Check($"{kind}.expected.txt", $"Subject: {message.Subject}\n\n{message.Text}");
        Golden.Check($"{kind}.expected.html", message.Html);
    }

    [Theory, MemberData(nameof(Kinds))]
    public void Write_EachKindInSpanish_ReadsAsReviewed(string kind)
    {
        var message = WriteInSpanish(kind);
        Golden.Check($"es-{kind}.expected.txt", $"Subject: {message.Subject}\n\n{message.Text}");
        Golden.Check($"es-{kind}.expected.html", message.Html);
        Assert.Contains("<html lang=\"es\">", message.Html, StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Kinds))]
    public void Write_EachKind_NeverSaysSafe(string kind)
    {
        var message = Write(kind);
        Assert.DoesNotMatch(SafeWord(), $"{message.Subject} {message.Text} {message.Html}");
        var spanish = WriteInSpanish(kind);
        Assert.DoesNotMatch(WordingTests.SafeInSpanish(), $"{spanish.Subject} {spanish.Text} {spanish.Html}");
    }

    /// <summary>A lock screen shows some forty letters of a subject: what must be known stands there, whatever the language, clock and day.</summary>
    [Theory, MemberData(nameof(Kinds))]
    public void Write_EachKind_SaysWhatMattersFirst(string kind)
    {
        Assert.All((MessageText[])[Write(kind), WriteInSpanish(kind)], message =>
        {
            Assert.Matches(FirstWords(), message.Subject[..Math.Min(45, message.Subject.Length)].Replace(Plain.Unbroken, ' '));
            Assert.True(message.Subject.Length <= 100, message.Subject);
        });
    }

    /// <summary>The same words in both forms: what HTML says without its tags is what the text says.</summary>
    [Theory, MemberData(nameof(Kinds))]
    public void Write_EachKind_SaysTheSameInTextAndHtml(string kind) =>
        Assert.All((MessageText[])[Write(kind), WriteInSpanish(kind)], SaysTheSame);

    private static void SaysTheSame(MessageText message)
    {
        var body = message.Html[message.Html.IndexOf("<main", StringComparison.Ordinal)..];
        var links = Href().Matches(body).Select(match => WebUtility.HtmlDecode(match.Groups[1].Value));
        var html = WebUtility.HtmlDecode(Tag().Replace(body, " "));
        Assert.Equal(WordsOf(message.Text), WordsOf($"{html} {string.Join(' ', links)}"));
    }

    [Theory, MemberData(nameof(Kinds))]
    public void Write_Html_NeedsNothingFromElsewhere(string kind) =>
        Assert.DoesNotMatch(Foreign(), Write(kind).Html);

    [Theory]
    [InlineData("leave")]
    [InlineData("garden-closed")]
    [InlineData("shelter-order")]
    public void Write_NobodyShouldWork_NamesNoJob(string kind)
    {
        var message = Write(kind);
        Assert.Empty(message.JobTokens);
        Assert.All((BriefJob[])[QuayEnd.Lemon, QuayEnd.Beans, QuayEnd.Pane], job =>
        {
            Assert.DoesNotContain(job.ItemName, message.Text, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain(job.ItemName, message.Html, StringComparison.OrdinalIgnoreCase);
        });
    }

    /// <summary>Rule 7.1: whatever the reason of the message, an order to leave that names no later hour ends all work.</summary>
    [Fact]
    public void Write_LeaveHoldsNow_AnyReasonGivesTheOrderAndNoJob() =>
        Assert.All(Enum.GetValues<ReminderReason>(), why =>
        {
            var message = Write(QuayEnd.MainWork with { Why = why, Leave = true, LeaveBy = null });
            Assert.StartsWith("Leave now", message.Text, StringComparison.Ordinal);
            Assert.StartsWith("Leave now", message.Subject, StringComparison.Ordinal);
            Assert.DoesNotContain("lemon", message.Text, StringComparison.Ordinal);
        });

    [Fact]
    public void Write_GardenClosed_AnyReasonGivesNoJob() =>
        Assert.All(Enum.GetValues<ReminderReason>(), why =>
            Assert.DoesNotContain("lemon", Write(QuayEnd.MainWork with { Why = why, Stage = Stage.GardenClosed }).Text, StringComparison.Ordinal));

    /// <summary>Rule 7.2, whatever the plan says.</summary>
    [Fact]
    public void Write_JobPastLeaveByOrStop_IsNotPassedOn() =>
        Gen.Select(Gen.Double[0, 60], Gen.Double[1, 50], Gen.Double[1, 50]).Sample((start, stop, leave) =>
        {
            var job = QuayEnd.Lemon with { Start = QuayEnd.Hours(start) };
            var text = Write(QuayEnd.MainWork with
            {
                Jobs = [job], StopEarliest = QuayEnd.Hours(stop), Leave = true, LeaveBy = QuayEnd.Hours(leave),
            }).Text;
            var ends = start + (job.Minutes / 60.0);
            Assert.Equal(ends <= Math.Min(stop, leave), text.Contains("lemon", StringComparison.Ordinal));
        });

    [Fact]
    public void Write_HostileNames_AreEncodedAndStayOnTheirLine()
    {
        const string name = "<script>alert(1)</script>\r\nBcc: x\u202E\"'&";
        var message = Write(QuayEnd.MainWork with
        {
            GardenName = name,
            Jobs = [QuayEnd.Lemon with { ItemName = name, AreaName = name, SiteName = name, PeopleNames = [name] }],
            LeftOut = [QuayEnd.Lemon with { ItemName = name, Why = new(LeftCause.NotRipe) { Crop = name }, Fallback = name }],
            Reason = new StageReason(StageCause.Note, name, null),
            Buy = [new(name, 2, 1, 1, name)],
        });
        Assert.DoesNotContain("<script", message.Html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain('\n', message.Subject);
        Assert.DoesNotContain('\r', message.Text + message.Html);
        Assert.DoesNotContain("\nBcc", message.Text, StringComparison.Ordinal);
        Assert.DoesNotContain('\u202E', message.Text + message.Html);
    }

    [Fact]
    public void Write_Links_OpenForTheRightPersonAndJob()
    {
        var text = Write("main-work").Text;
        var tokens = LinkToken().Matches(text).Select(match => AckToken.Read(match.Groups[1].Value, [QuayEnd.Key], QuayEnd.Now).Token!).ToList();
        Assert.Equal(["lemon/weigh_down", "beans/pick", "frame/take_down"], tokens.Take(3).Select(token => token.Subject));
        Assert.All(tokens, token => Assert.Equal(("quay-end", "e1", "ada"), (token.GardenId, token.EpisodeId, token.PersonId)));
        Assert.Equal((AckPurpose.All, AckList.Hash(Write("main-work").JobTokens)), (tokens[3].Purpose, tokens[3].Subject));
    }

    [Fact]
    public void Write_RecheckList_LinksAreForTheRecheckOnly()
    {
        var last = LinkToken().Matches(Write("recheck").Text)[^1].Groups[1].Value;
        Assert.Equal(AckPurpose.Recheck, AckToken.Read(last, [QuayEnd.Key], QuayEnd.Now).Token!.Purpose);
    }

    /// <summary>What goes to a gateway or a phone is no mail to be answered.</summary>
    [Theory]
    [InlineData("email", true)]
    [InlineData("webhook", false)]
    [InlineData("push:d1", false)]
    public void Write_AnswersAreRead_IsSaidInMailOnly(string channel, bool said)
    {
        var reminder = QuayEnd.Remind(QuayEnd.MainWork);
        var text = MessageWriter.Write(reminder with { Key = reminder.Key with { Channel = channel } }, QuayEnd.LinksAndReplies).Text;
        Assert.Equal(said, text.Contains("Answer this mail", StringComparison.Ordinal));
    }

    [Fact]
    public void Write_Twice_GivesTheSameBytes()
    {
        var (first, second) = (Write("main-work"), Write("main-work"));
        Assert.Equal((first.Subject, first.Text, first.Html), (second.Subject, second.Text, second.Html));
    }

    /// <summary>Also a work day or a silent source after the storm: cautions stand before any job.</summary>
    [Fact]
    public void Write_AfterTheStorm_AnyWorkBeginsWithCautions() =>
        Assert.All((ReminderReason[])[ReminderReason.StageChanged, ReminderReason.WorkDay, ReminderReason.OrderChanged, ReminderReason.FeedSilent, ReminderReason.Recheck], why =>
        {
            var text = Write(QuayEnd.Briefs["recheck"].Brief with { Why = why }).Text;
            Assert.StartsWith("Recheck.", text, StringComparison.Ordinal);
            Assert.True(text.IndexOf("Wires:", StringComparison.Ordinal) < text.IndexOf("Check: cold frame", StringComparison.Ordinal));
            Assert.Equal(why == ReminderReason.FeedSilent, text.Contains("Silence is not good news", StringComparison.Ordinal));
        });

    private static MessageText Write(string kind) =>
        MessageWriter.Write(QuayEnd.Remind(QuayEnd.Briefs[kind].Brief), QuayEnd.Briefs[kind].Links);

    private static MessageText WriteInSpanish(string kind) =>
        MessageWriter.Write(QuayEnd.RemindInSpanish(QuayEnd.Briefs[kind].Brief), QuayEnd.Briefs[kind].Links);

    private static MessageText Write(MessageBrief brief) => MessageWriter.Write(QuayEnd.Remind(brief), QuayEnd.Links);

    private static IEnumerable<string> WordsOf(string text) =>
        text.ToLowerInvariant().Split([' ', '\n', Plain.Unbroken], StringSplitOptions.RemoveEmptyEntries)
            .Select(word => word.TrimEnd(':')).Where(word => word is not ("-" or "")).Order(StringComparer.Ordinal);

    [GeneratedRegex(@"\bsafe(ly|ty|r|st)?\b", RegexOptions.IgnoreCase)]
    private static partial Regex SafeWord();

    /// <summary>A stop or leave-by with weekday and hour, or what to do at once.</summary>
    [GeneratedRegex(@"^((Stop|Leave) by (about )?[A-Z][a-z]{2} \d?\d:\d\d|(Pare|Evacúe) antes del [a-zéá]+ \d?\d:\d\d|Leave now|Evacúe ya|Stop now|Pare ya|No stop time yet|Aún sin hora de parar|Recheck: look first|Revisión: primero mire|Stand down|Fin de los preparativos|Phone [A-Z][a-z]+|Llame a [A-Z][a-z]+|Listening, nothing due|A la escucha, nada pendiente)")]
    private static partial Regex FirstWords();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex("href=\"([^\"]*)\"")]
    private static partial Regex Href();

    [GeneratedRegex(@"<(img|script|link|table|iframe|style)\b|url\(|@import|\son\w+=", RegexOptions.IgnoreCase)]
    private static partial Regex Foreign();

    [GeneratedRegex(@"^https://garden\.example/j/(\S+)$", RegexOptions.Multiline)]
    private static partial Regex LinkToken();
}
