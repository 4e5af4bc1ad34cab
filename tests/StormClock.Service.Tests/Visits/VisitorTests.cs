using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Tests.Books;
using StormClock.Service.Visits;

namespace StormClock.Service.Tests.Visits;

/// <summary>Who may enter what (common practice, no source).</summary>
public class VisitorTests
{
    private static readonly GardenBook Quay = WithPeople("quay", ("ines", "ines@example.org", PersonRole.Gardener), ("tom", "tom@example.org", PersonRole.Helper));
    private static readonly GardenBook Hill = WithPeople("hill", ("gil", "gil@example.org", PersonRole.Gardener), ("kay", "kay@example.org", PersonRole.Keeper));
    private static readonly IReadOnlyList<GardenBook> Books = [Quay, Hill];

    [Theory]
    [InlineData(VisitorKind.Stranger, null, "")]
    [InlineData(VisitorKind.AtTheBox, null, "quay hill")]
    [InlineData(VisitorKind.Passcode, null, "quay hill")]
    [InlineData(VisitorKind.Mail, "ines@example.org", "quay")]
    [InlineData(VisitorKind.Mail, "INES@example.org", "quay")]
    [InlineData(VisitorKind.Mail, "tom@example.org", "quay")]
    [InlineData(VisitorKind.Mail, "kay@example.org", "quay hill")]
    [InlineData(VisitorKind.Mail, "gone@example.org", "")]
    public void GardensOf_EachVisitor_AreTheirs(VisitorKind kind, string? email, string expected) =>
        Assert.Equal(expected, string.Join(' ', new Visitor(kind, email).GardensOf(Books).Select(book => book.Id)));

    [Theory]
    [InlineData("ines@example.org", "Now Jobs After Walk PlotMap Worry Storms")]
    [InlineData("tom@example.org", "Now Jobs After")]
    [InlineData("gil@example.org", "")]
    [InlineData("kay@example.org", "Now Jobs After Walk PlotMap Worry Storms")]
    public void MayEnter_EachRole_OpensItsRooms(string email, string expected) =>
        Assert.Equal(expected, string.Join(' ', Enum.GetValues<GardenRoom>().Where(room => new Visitor(VisitorKind.Mail, email).MayEnter(room, Quay, Books))));

    [Theory]
    [InlineData(VisitorKind.Mail, "ines@example.org", false)]
    [InlineData(VisitorKind.Mail, "kay@example.org", true)]
    [InlineData(VisitorKind.Passcode, null, true)]
    [InlineData(VisitorKind.AtTheBox, null, true)]
    [InlineData(VisitorKind.Stranger, null, false)]
    public void IsKeeper_OnlyThoseWhoLookAfterTheBox(VisitorKind kind, string? email, bool expected) =>
        Assert.Equal(expected, new Visitor(kind, email).IsKeeper(Books));

    [Fact]
    public void ActsAs_WhoeverIsKnownByThePasscode_IsTheGardener() =>
        Assert.Equal(("ines", "tom"), (new Visitor(VisitorKind.Passcode).ActsAs(Quay).Id, new Visitor(VisitorKind.Mail, "tom@example.org").ActsAs(Quay).Id));

    private static GardenBook WithPeople(string id, params (string Id, string Email, PersonRole Role)[] people)
    {
        var book = GardenReader.Read(SampleBook.Good, id).Value!;
        return book with { Id = id, People = [.. people.Select(person => book.People[0] with { Id = person.Id, Name = person.Id, Email = person.Email, Role = person.Role })] };
    }
}
