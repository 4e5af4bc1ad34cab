using System.Text;

namespace StormClock.Service.Messages;

/// <summary>A message as plain text: one thought a line, lists by hyphen, links on lines of their own.</summary>
internal static class TextForm
{
    public static string Of(IReadOnlyList<Block> blocks)
    {
        var text = new StringBuilder();
        foreach (var block in blocks) Append(text, block);

        return text.ToString().Replace(Plain.Unbroken, ' ');
    }

    private static void Append(StringBuilder text, Block block)
    {
        switch (block)
        {
            case Lead lead: text.Append($"{lead.Text}\n\n"); break;
            case Paragraph paragraph: text.Append($"{paragraph.Text}\n\n"); break;
            case Heading heading: text.Append($"{heading.Text.ToUpperInvariant()}\n\n"); break;
            case Place place: text.Append($"{place.Text}:\n\n"); break;
            case Bullets bullets: text.Append($"{string.Concat(bullets.Lines.Select(line => $"- {line}\n"))}\n"); break;
            case Entry entry:
                text.Append($"{entry.Number}. {entry.Title}\n{string.Concat(entry.Details.Select(line => $"   {line}\n"))}\n");
                break;
            case Link link: text.Append($"{link.Label}\n{link.Url}\n\n"); break;
            case Foot foot: text.Append($"{foot.Text}\n"); break;
            default: throw new ArgumentOutOfRangeException(nameof(block), block, null);
        }
    }
}
