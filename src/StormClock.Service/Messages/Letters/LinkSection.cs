using StormClock.Core.Acknowledgements;

namespace StormClock.Service.Messages.Letters;

/// <summary>How work is marked: by an answer to the mail, by one link a job and one for all, or on the box.</summary>
internal static class LinkSection
{
    public static IEnumerable<Block> Of(LetterContext context)
    {
        var jobs = context.Jobs;
        if (jobs.Count == 0) yield break;

        yield return new Heading(context.Say("links.heading"));
        if (!context.Links.HasLinks && !context.TakesReplies)
        {
            yield return new Paragraph(context.Say("links.none"));
            yield break;
        }

        if (context.TakesReplies) yield return new Paragraph(ReplyHint.Work(jobs.Count, context.Speech));
        if (!context.Links.HasLinks) yield break;

        yield return new Paragraph(context.Say("links.how"));
        for (var i = 0; i < jobs.Count; i++)
        {
            if (context.Links.ForJob(context.Reminder, jobs[i]) is { } link) yield return new Link($"{i + 1}. {Words.Title(jobs[i], context.Speech)}", link);
        }

        var purpose = context.IsRecheck ? AckPurpose.Recheck : AckPurpose.All;
        if (jobs.Count > 1 && context.Links.ForAll(context.Reminder, purpose, jobs) is { } all) yield return new Link(context.Say("links.all"), all);
    }
}
