using CsCheck;
using StormClock.Service.Messages;
using StormClock.Service.Replies;
using StormClock.Service.Tests.Messages;
using StormClock.Service.Web;

namespace StormClock.Service.Tests.Replies;

/// <summary>Forms of quoting from memory of common mail programs; words invented.</summary>
public class ReplyTextTests
{
    private const string Letter = "Unsafe wind could come as early as Wed 23:45 EDT.\n\nNEXT JOBS\n\n1. Strap: Muscadine arbor over the path\n\nAnswer this mail with: done 1 3, for jobs 1 and 3; or done alone, for all of them. In the same way: cannot, or later.\n";

    [Theory]
    [InlineData("done 3 5\n\n> done 1", "Done 3 5")]
    [InlineData("\n\n  Done!\n\nAmos", "Done ")]
    [InlineData("Hi,\n\ndone 3\n\nThanks\nAmos", "Done 3")]
    [InlineData("done 1\ncannot 2\nlater 3", "Done 1; Cannot 2; Later 3")]
    [InlineData("done\ncannot 2", "Done ; Cannot 2")]
    [InlineData("done 3\n\nLater,\nAmos", "Done 3")]
    [InlineData("done 3\nLater,\nAmos", "Done 3")]
    [InlineData("done 3\nthe rest is hopeless\ncannot 4", "Done 3")]
    [InlineData("> done 3\ndone 4", "")]
    [InlineData("On Wed, Sep 22, 2027 at 1:30 PM StormClock <garden@example.org> wrote:\ndone 1", "")]
    [InlineData("-- \ndone", "")]
    [InlineData("--\ndone", "")]
    [InlineData("-----Original Message-----\ndone", "")]
    [InlineData("________________________________\nFrom: StormClock\ndone", "")]
    [InlineData("From: StormClock <garden@example.org>\nSent: Wednesday\n\ndone 1", "")]
    [InlineData("*From:* StormClock\ndone 1", "")]
    [InlineData("Begin forwarded message:\n\ndone 1", "")]
    [InlineData("| done 1", "")]
    [InlineData("Sent from my phone\n\nUnsafe wind could come as early as Wed\n23:45 EDT.\ndone 1", "")]
    [InlineData("Answer this mail with:\ndone 1 3, for jobs 1 and 3; or\ndone", "")]
    [InlineData("", "")]
    [InlineData("What does 3 mean?", "")]
    public void Read_Text_GivesTheWordsAboveTheQuote(string text, string commands) => Assert.Equal(commands, Said(text.Split('\n')));

    [Fact]
    public void Read_AnswerFarDown_IsNotLookedFor() => Assert.Equal("", Said([.. Enumerable.Repeat("so much to tell", 80), "done 1"]));

    /// <summary>Our own letter, sent back without one mark that it is quoted, in lines of any length, never acts.</summary>
    [Theory]
    [MemberData(nameof(MessageWriterTests.Kinds), MemberType = typeof(MessageWriterTests))]
    public void Read_OwnLetterUnmarked_NeverActs(string kind)
    {
        var links = new LinkMaker(QuayEnd.Briefs[kind].Links.HasLinks ? new("https://garden.example") : null, QuayEnd.Key, takesReplies: true);
        var text = MessageWriter.Write(QuayEnd.Remind(QuayEnd.Briefs[kind].Brief), links).Text;
        Assert.All((int[])[200, 76, 72, 60, 50, 40], width => Assert.Empty(ReplyText.Read(Wrapped(text, width), text).Commands));


        // The name of a link is; it never stands at the top.
        Assert.All(text.Split('\n').Where(line => line != "I am in"), line => Assert.Null(ReplyCommand.Read(line)));
    }

    /// <summary>Whatever stands below a mark of quoting changes nothing.</summary>
    [Fact]
    public void Read_AnythingBelowTheQuote_ChangesNothing() =>
        Gen.Select(OneOf("done 2", "hello", "", "later"), OneOf("> x", "-- ", "From: x", "On Tue x wrote:"), OneOf("done", "done 1", "cannot 3", "in", "", "> y").List[0, 8])
            .Sample((above, mark, below) => Assert.Equal(Said([above, mark]), Said([above, mark, .. below])));

    [Theory]
    [InlineData("<html><head><title>done</title><style>done</style></head><body><div>done 3</div><blockquote>done 1</blockquote></body></html>", "Done 3")]
    [InlineData("<p>Done&nbsp;3<br>cannot&#32;2</p>", "Done 3; Cannot 2")]
    [InlineData("<div dir=\"auto\">done 3</div><br><div class=\"gmail_quote\"><div>done 1</div></div>", "Done 3")]
    [InlineData("<script>done</script><div>later 2</div>", "Later 2")]
    [InlineData("<body><!-- done -->\n<div\n>hello</div></body>", "")]
    [InlineData("<div><b>do</b>ne 4</div>", "Done 4")]
    [InlineData("<div class=\"gmail_signature\">done</div>", "")]
    [InlineData("<hr><b>From:</b> StormClock<br>done 1", "")]
    [InlineData("<div id=\"divRplyFwdMsg\">done 1</div>", "")]
    [InlineData("done 3 <!-- never closed", "Done 3")]
    [InlineData("<table><tr><td>done 3</td></tr><tr><td>Amos</td></tr></table>", "Done 3")]
    public void Html_Answer_GivesTheWordsAboveTheQuote(string html, string commands) => Assert.Equal(commands, Said(HtmlWords.Of(html).Split('\n')));

    private static Gen<string> OneOf(params string[] texts) => Gen.Int[0, texts.Length - 1].Select(i => texts[i]);

    private static string Said(IEnumerable<string> lines) =>
        string.Join("; ", ReplyText.Read(lines, Letter).Commands.Select(command => $"{command.Verb} {string.Join(' ', command.Numbers)}"));

    private static IEnumerable<string> Wrapped(string text, int width)
    {
        foreach (var line in text.Split('\n'))
        {
            var row = "";
            foreach (var word in line.Split(' '))
            {
                if (row.Length > 0 && row.Length + 1 + word.Length > width)
                {
                    yield return row;
                    row = "";
                }

                row = row.Length == 0 ? word : $"{row} {word}";
            }

            yield return row;
        }
    }
}
