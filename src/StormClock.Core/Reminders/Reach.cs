using StormClock.Core.Garden;

namespace StormClock.Core.Reminders;

/// <summary>The ways by which each person of a garden is told: mail for everybody with an address, and whatever else there is.</summary>
/// <param name="Besides">Names of further channels by person id, as reminder keys carry them.</param>
public sealed record Reach(IReadOnlyDictionary<string, IReadOnlyList<string>> Besides)
{
    public const string Mail = "email";

    /// <summary>Mail to a person's second address; for late work alone, when nobody answers.</summary>
    public const string Second = "email:second";

    /// <summary>Ids of the people who get the weekly line that the box listens.</summary>
    public IReadOnlySet<string> Weekly { get; init; } = new HashSet<string>();

    /// <summary>Messages carry a way to answer them.</summary>
    public bool CanAnswer { get; init; } = true;

    public static Reach MailOnly { get; } = new(new Dictionary<string, IReadOnlyList<string>>());

    /// <summary>Empty for somebody who cannot be told anything.</summary>
    public IReadOnlyList<string> Of(Person person) =>
        [.. person.Email is null ? [] : (string[])[Mail], .. Besides.GetValueOrDefault(person.Id) ?? []];
}
