using StormClock.Core.Garden;
using StormClock.Core.Reminders;
using StormClock.Service.Books;
using StormClock.Service.Tests.Books;
using StormClock.Service.Web.Keeper;

namespace StormClock.Service.Tests.Visits;

/// <summary>What may not be taken from a garden (common practice, no source). A person is a role, g, h or k, with @ for an address and ! for a device.</summary>
public class PeopleRulesTests
{
    [Theory]
    [InlineData("g@ h", "g@", null)]
    [InlineData("g@ h", "h", "people.last-gardener")]
    [InlineData("g@ h@", "h@", "people.last-gardener")]
    [InlineData("g@ h", "k@ h", "people.last-gardener")]
    [InlineData("g@ g", "g", "people.last-told")]
    [InlineData("g@ g@", "g@", null)]
    [InlineData("g@ h@", "g h@", "people.last-told")] // A helper hears of their own work alone.
    [InlineData("g h@", "g", "people.last-told")]
    [InlineData("g h@", "g@", null)]
    [InlineData("g@ k@", "g k@", "people.last-told")] // A keeper hears of the box, not of the work.
    [InlineData("g@ g!", "g!", null)]
    [InlineData("g! h", "g h", "people.last-told")]
    [InlineData("g h", "g", null)] // Nobody could be told before either.
    [InlineData("h@ h", "h@", null)] // Without a gardener everybody hears all.
    [InlineData("h@ h", "h", "people.last-told")]
    public void Broken_EachChange_IsRefusedOnlyWhereSomethingIsLost(string before, string after, string? expected) =>
        Assert.Equal(expected, PeopleRules.Broken(Book(before), Book(after), Reach));

    private static GardenBook Book(string people)
    {
        var book = GardenReader.Read(SampleBook.Good, "quay").Value!;
        return book with { People = [.. people.Split(' ').Select((word, at) => book.People[0] with
        {
            Id = $"{word.TrimEnd('@')}{at}",
            Role = word[0] switch { 'g' => PersonRole.Gardener, 'k' => PersonRole.Keeper, _ => PersonRole.Helper },
            Email = word.EndsWith('@') ? "ada@example.org" : null,
        })] };
    }

    private static Reach Reach(GardenBook book) =>
        new(book.People.Where(person => person.Id.Contains('!', StringComparison.Ordinal)).ToDictionary(person => person.Id, _ => (IReadOnlyList<string>)["push:phone"]));
}
