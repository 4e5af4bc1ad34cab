using CsCheck;
using StormClock.Service.Replies;

namespace StormClock.Service.Tests.Replies;

public class ReplyCommandTests
{
    /// <summary>As people write on a phone; common practice, no source.</summary>
    [Theory]
    [InlineData("done", ReplyVerb.Done)]
    [InlineData("Done.", ReplyVerb.Done)]
    [InlineData("  DONE !!  ", ReplyVerb.Done)]
    [InlineData("\"done\"", ReplyVerb.Done)]
    [InlineData("done 3 5", ReplyVerb.Done, 3, 5)]
    [InlineData("Done 3, 5", ReplyVerb.Done, 3, 5)]
    [InlineData("done: 3 and 5.", ReplyVerb.Done, 3, 5)]
    [InlineData("done 3 & #5, thanks", ReplyVerb.Done, 3, 5)]
    [InlineData("done 3;5", ReplyVerb.Done, 3, 5)]
    [InlineData("done 5 3 5", ReplyVerb.Done, 5, 3)]
    [InlineData("done 3-5", ReplyVerb.Done, 3, 4, 5)]
    [InlineData("done 3 \u2013 5, 8", ReplyVerb.Done, 3, 4, 5, 8)]
    [InlineData("3 5 done", ReplyVerb.Done, 3, 5)]
    [InlineData("All done!", ReplyVerb.Done)]
    [InlineData("done all", ReplyVerb.Done)]
    [InlineData("jobs 1 and 2 done", ReplyVerb.Done, 1, 2)]
    [InlineData("Done \uFF13", ReplyVerb.Done, 3)]
    [InlineData("done \U0001F44D", ReplyVerb.Done)]
    [InlineData("done\u00A03", ReplyVerb.Done, 3)]
    [InlineData("cannot 2", ReplyVerb.Cannot, 2)]
    [InlineData("Can not 2", ReplyVerb.Cannot, 2)]
    [InlineData("can't 2", ReplyVerb.Cannot, 2)]
    [InlineData("I can\u2019t, 2", ReplyVerb.Cannot, 2)]
    [InlineData("later 4", ReplyVerb.Later, 4)]
    [InlineData("Later", ReplyVerb.Later)]
    [InlineData("in", ReplyVerb.In)]
    [InlineData("In.", ReplyVerb.In)]
    [InlineData("I am in", ReplyVerb.In)]
    [InlineData("I'm in!", ReplyVerb.In)]
    [InlineData("we are done", null)]
    [InlineData("", null)]
    [InlineData("3 5", null)]
    [InlineData("done?", null)]
    [InlineData("3 done?", null)]
    [InlineData("not done", null)]
    [InlineData("done not", null)]
    [InlineData("undone", null)]
    [InlineData("nearly done", null)]
    [InlineData("done with the beans", null)]
    [InlineData("done 3 but not 5", null)]
    [InlineData("done 3/5", null)]
    [InlineData("done \u2462", null)]
    [InlineData("done \u00B2", null)]
    [InlineData("done \u0663", ReplyVerb.Done, 3)]
    [InlineData("done III", null)]
    [InlineData("done 3.5", null)]
    [InlineData("done 10:30", null)]
    [InlineData("done 50%", null)]
    [InlineData("done 5-3", null)]
    [InlineData("done 1000", null)]
    [InlineData("done 99999999999999999999", null)]
    [InlineData("done -3", ReplyVerb.Done, 3)]
    [InlineData("done later", null)]
    [InlineData("done cannot", null)]
    [InlineData("in 3", null)]
    [InlineData("in all", null)]
    [InlineData("in a minute", null)]
    [InlineData("come in", null)]
    public void Read_Line_IsThisOrNothing(string line, ReplyVerb? verb, params int[] numbers)
    {
        var command = ReplyCommand.Read(line);
        Assert.Equal(verb, command?.Verb);
        if (command is not null) Assert.Equal(numbers, command.Numbers);
    }

    /// <summary>Other languages' words are compared without their accents, however a phone writes those.</summary>
    [Theory]
    [InlineData("M\u00C1S Tarde", "mas tarde")]
    [InlineData("ma\u0301s tarde", "mas tarde")]
    [InlineData("I\u2019m", "im")]
    [InlineData("\u00F1 \uFF13\u00A0x", "n 3 x")]
    public void Fold_Text_IsThis(string text, string folded) => Assert.Equal(folded, ReplyWords.Fold(text));

    [Fact]
    public void Read_LongLine_IsNothing() => Assert.Null(ReplyCommand.Read("done " + string.Join(' ', Enumerable.Range(1, 100))));

    [Fact]
    public void Read_AnyText_NeverThrows() =>
        Gen.String[Gen.Char["done canotlrin0359-\u2013,.:?#\u0301\u00B4\ud83d\udc4d\0\uFF13"], 0, 80].Sample(line =>
        {
            if (ReplyCommand.Read(line) is { } command) Assert.All(command.Numbers, number => Assert.InRange(number, 0, 999));
        });

    [Theory]
    [InlineData("done", "Done:1,2,3,4,5", "", false)]
    [InlineData("done 3 5", "Done:3,5", "", false)]
    [InlineData("done\ncannot 2", "Cannot:2|Done:1,3,4,5", "", false)]
    [InlineData("done 1\nlater 4", "Done:1|Later:4", "", false)]
    [InlineData("done 3 9", "Done:3", "9", false)]
    [InlineData("done 0", "", "0", false)]
    [InlineData("done 1-3\ncannot 3", "Done:1,2,3|Cannot:3", "", true)]
    public void Wish_OfFiveJobs_IsThis(string lines, string work, string unknown, bool contradicts)
    {
        var wish = ReplyWish.Of([.. lines.Split('\n').Select(line => ReplyCommand.Read(line)!)], 5);
        Assert.Equal(work, string.Join('|', wish.Work.Select(same => $"{same.Verb}:{string.Join(',', same.Numbers)}")));
        Assert.Equal(unknown, string.Join(',', wish.Unknown));
        Assert.Equal(contradicts, wish.Contradicts);
    }
}
