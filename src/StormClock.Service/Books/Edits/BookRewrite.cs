using StormClock.Core.Garden;

namespace StormClock.Service.Books.Edits;

/// <summary>A new text for the file of a garden book, proved by reading it.</summary>
/// <param name="Text">The whole file.</param>
/// <param name="Book">As it will be read from that text.</param>
public abstract record BookRewrite(string Text, GardenBook Book)
{
    /// <summary>Only the lines of what changed are new; everything else is as it was, to the character.</summary>
    /// <param name="TakesRemarks">Lines went that may have held a remark, such as those of an entry that was removed.</param>
    public sealed record Kept(string Text, GardenBook Book, bool TakesRemarks) : BookRewrite(Text, Book);

    /// <summary>The file is written anew: remarks, layout and units are lost, and items of a table come into the book.</summary>
    public sealed record Whole(string Text, GardenBook Book) : BookRewrite(Text, Book);
}
