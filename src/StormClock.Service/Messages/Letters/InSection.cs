using StormClock.Core.Reminders;
using StormClock.Service.Web;
using StormClock.Service.Wording;

namespace StormClock.Service.Messages.Letters;

/// <summary>Who said to be in, and the reader's own way to say that.</summary>
internal static class InSection
{
    public static IEnumerable<Block> Of(LetterContext context)
    {
        var others = context.Brief.In.Where(said => said.PersonId != context.Reminder.To.Id).ToList();
        if (others.Count > 0) yield return new Bullets([.. others.Select(said => Line(new(said.Name, said.At), context.Times, context.Speech))]);
        if (others.Count < context.Brief.In.Count) yield break;

        var link = context.Links.ForIndoors(context.Reminder);
        if (link is not null || context.TakesReplies) yield return new Heading(context.Say("indoors.heading"));
        if (link is not null) yield return new Link(context.Say("indoors.link"), link);
        if (context.TakesReplies) yield return new Paragraph(context.Say(link is null ? "reply.indoors" : "reply.indoors.or"));
    }

    /// <summary>Also for pages.</summary>
    public static string Line(PersonNow person, Times times, Speech speech)
    {
        var name = Plain.Line(person.Name);
        return person.Since is { } since ? speech.Say("in.since", ("person", name), ("time", times.Exact(since))) : speech.Say("in.not-heard", ("person", name));
    }
}
