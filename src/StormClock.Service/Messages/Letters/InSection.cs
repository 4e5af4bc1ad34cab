using StormClock.Core.Reminders;

namespace StormClock.Service.Messages.Letters;

/// <summary>Who said to be in, and the reader's own button for that.</summary>
internal static class InSection
{
    public static IEnumerable<Block> Of(LetterContext context)
    {
        var others = context.Brief.In.Where(said => said.PersonId != context.Reminder.To.Id).ToList();
        if (others.Count > 0) yield return new Bullets([.. others.Select(said => Line(said, context.Times))]);
        if (others.Count < context.Brief.In.Count || context.Links.ForIndoors(context.Reminder) is not { } link) yield break;

        yield return new Heading("Tell the others");
        yield return new Link("I am in", link);
    }

    /// <summary>Also for pages.</summary>
    public static string Line(SaidIn said, Times times) => $"{Plain.Line(said.Name)} is in, {times.Exact(said.At)}";
}
