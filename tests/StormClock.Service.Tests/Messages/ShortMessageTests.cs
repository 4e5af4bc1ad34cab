using System.Text;
using System.Text.Json;
using CsCheck;
using StormClock.Core.Acknowledgements;
using StormClock.Core.Stages;
using StormClock.Service.Delivery.Push;
using StormClock.Service.Messages;
using StormClock.Service.Web;

namespace StormClock.Service.Tests.Messages;

public class ShortMessageTests
{
    public static TheoryData<string> Kinds => [.. QuayEnd.Briefs.Keys];

    [Fact]
    public void Of_MainWork_SaysTheStopFirstThenTheNextJobThenOneLink()
    {
        var brief = Short("main-work");
        Assert.Equal("Stop by Tue 14:00\u00a0EDT: Main work, Quay End".Replace('\u00a0', ' '), brief.Title.Replace('\u00a0', ' '));
        Assert.StartsWith("Unsafe wind could come as early as Tue 14:00 EDT", brief.Line, StringComparison.Ordinal);
        Assert.Contains("Next of 3 jobs: Weigh down: potted lemon (4)", brief.Line);
        Assert.Equal(AckPurpose.All, Purpose(brief));
    }

    [Theory]
    [InlineData("garden-closed", AckPurpose.Indoors)]
    [InlineData("recheck", AckPurpose.Recheck)]
    public void Of_ClosedAndAfter_NamesNoJob(string kind, AckPurpose purpose)
    {
        var brief = Short(kind);
        Assert.Equal(purpose, Purpose(brief));
        Assert.DoesNotContain("Next", brief.Line);
    }

    [Fact]
    public void Of_Leave_SaysNothingElse()
    {
        Assert.Null(Short("leave").Link);
        Assert.DoesNotContain("Next", Short("leave").Line);
    }

    [Fact]
    public void Of_NoLinks_HasNone() => Assert.Null(Short("main-work-no-links").Link);

    [Theory, MemberData(nameof(Kinds))]
    public void Of_EachKind_IsOneLineThatFitsAndNeverSaysSafe(string kind)
    {
        var payload = PushPayload.Of(Short(kind), "e1");
        Assert.InRange(Encoding.UTF8.GetByteCount(payload), 1, PushEncryption.LongestText);
        var json = JsonDocument.Parse(payload).RootElement;
        foreach (var text in new[] { json.GetProperty("title").GetString()!, json.GetProperty("line").GetString()! })
        {
            Assert.NotEmpty(text);
            Assert.DoesNotContain('\n', text);
            Assert.DoesNotMatch(@"(?i)(?<!un)\bsafe\b", text);
        }

        Assert.Equal(Short(kind).Link, json.GetProperty("link").GetString());
    }

    [Fact]
    public void Payload_AnyText_FitsOneRecordAndEndsAtAWord() =>
        Gen.Select(Gen.String[0, 3000], Gen.String[0, 3000], Gen.Int[0, 5000]).Sample((title, line, link) =>
        {
            var payload = PushPayload.Of(new(title, line, link == 0 ? null : new string('x', link)), new string('a', 32));
            Assert.InRange(Encoding.UTF8.GetByteCount(payload), 1, PushEncryption.LongestText);
            JsonDocument.Parse(payload);
        });

    [Theory]
    [InlineData("Tie the bean poles", 30, "Tie the bean poles")]
    [InlineData("Tie the bean poles", 18, "Tie the bean poles")]
    [InlineData("Tie the bean poles", 17, "Tie the bean…")]
    [InlineData("Tie the bean poles", 12, "Tie the…")]
    [InlineData("Tie, the bean", 6, "Tie…")]
    [InlineData("Beanpoles", 5, "Bean…")]
    public void AtWord_TooLong_IsCutAfterAWholeWord(string text, int longest, string cut)
    {
        Assert.Equal(cut, PushPayload.AtWord(text, longest));
        Assert.InRange(cut.Length, 1, longest);
    }

    [Fact]
    public void Webhook_MainWork_SaysWhoWhatAndUntilWhen()
    {
        var reminder = QuayEnd.Remind(QuayEnd.Briefs["main-work"].Brief);
        var letter = MessageWriter.Write(reminder, QuayEnd.Links);
        var json = JsonDocument.Parse(WebhookBody.Of(reminder, letter, ShortMessage.Of(reminder, letter, QuayEnd.Links), "e1")).RootElement;
        Assert.Equal(
            ["id", "garden", "person", "name", "reason", "stage", "urgent", "usefulUntil", "title", "line", "link", "text", "language"],
            json.EnumerateObject().Select(property => property.Name));
        Assert.Equal(("e1", "Main work", letter.Text), (json.GetProperty("id").GetString(), json.GetProperty("stage").GetString(), json.GetProperty("text").GetString()));
    }

    /// <summary>Only while there is time for it, and only where devices can be subscribed.</summary>
    [Fact]
    public void Letter_EarlyAndWhereDevicesCanBeSubscribed_OffersIt()
    {
        var offering = new LinkMaker(new("https://garden.example"), QuayEnd.Key, offersPush: true);
        foreach (var (kind, (brief, _)) in QuayEnd.Briefs)
        {
            var offered = MessageWriter.Write(QuayEnd.Remind(brief), offering).Text.Contains("/p/", StringComparison.Ordinal);
            Assert.Equal(brief is { Why: Core.Reminders.ReminderReason.StageChanged, Stage: Stage.LookOver or Stage.SlowWork, Leave: false }, offered);
            Assert.DoesNotContain("/p/", MessageWriter.Write(QuayEnd.Remind(brief), QuayEnd.Links).Text);
            if (kind == "look-over") Assert.True(offered);
        }
    }

    private static ShortMessage Short(string kind)
    {
        var (brief, links) = QuayEnd.Briefs[kind];
        var reminder = QuayEnd.Remind(brief);
        return ShortMessage.Of(reminder, MessageWriter.Write(reminder, links), links);
    }

    private static AckPurpose Purpose(ShortMessage brief) =>
        AckToken.Read(brief.Link!.Split('/')[^1], [QuayEnd.Key], QuayEnd.Now).Token!.Purpose;
}
