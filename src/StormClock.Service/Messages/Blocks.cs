namespace StormClock.Service.Messages;

/// <summary>One piece of a message; text and HTML are written from the same pieces, so they say the same.</summary>
public abstract record Block;

/// <summary>What must be known even if nothing else is read.</summary>
public sealed record Lead(string Text) : Block;

public sealed record Paragraph(string Text) : Block;

public sealed record Heading(string Text) : Block;

/// <summary>Site and area of the jobs that follow.</summary>
public sealed record Place(string Text) : Block;

public sealed record Bullets(IReadOnlyList<string> Lines) : Block;

/// <summary>One job, numbered through the message.</summary>
public sealed record Entry(int Number, string Title, IReadOnlyList<string> Details) : Block;

public sealed record Link(string Label, string Url) : Block;

/// <summary>The end, set apart: when the next message is due.</summary>
public sealed record Foot(string Text) : Block;
