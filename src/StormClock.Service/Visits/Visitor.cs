using StormClock.Core.Garden;

namespace StormClock.Service.Visits;

/// <summary>By what somebody is known.</summary>
public enum VisitorKind
{
    /// <summary>Not at all.</summary>
    Stranger,

    /// <summary>By sitting at the box itself, as long as nobody else can reach its pages and no passcode is set.</summary>
    AtTheBox,

    /// <summary>By the passcode of the installation.</summary>
    Passcode,

    /// <summary>By a link sent to an address that stands in a garden book.</summary>
    Mail,
}

/// <summary>Who looks at the pages. What they may do is asked of the books each time, so that whoever is taken out of a book is out at once.</summary>
/// <param name="Email">With <see cref="VisitorKind.Mail"/>; else null.</param>
public sealed record Visitor(VisitorKind Kind, string? Email = null)
{
    public static Visitor Stranger { get; } = new(VisitorKind.Stranger);

    /// <summary>Looks after the installation: the passcode, the box itself, or a keeper of any book.</summary>
    public bool IsKeeper(IEnumerable<GardenBook> books) =>
        Kind is VisitorKind.AtTheBox or VisitorKind.Passcode || books.Any(book => RolesIn(book).Contains(PersonRole.Keeper));

    /// <summary>The gardens this visitor may look into.</summary>
    public IEnumerable<GardenBook> GardensOf(IReadOnlyList<GardenBook> books)
    {
        var keeper = IsKeeper(books);
        return books.Where(book => keeper || RolesIn(book).Any());
    }

    public bool MayEnter(GardenRoom room, GardenBook book, IReadOnlyList<GardenBook> books) =>
        IsKeeper(books) || RolesIn(book).Any(role => role == PersonRole.Gardener || GardenRooms.OpenToHelpers.Contains(room));

    /// <summary>In whose name answers are taken: their own, or, of whoever is known by the passcode or the box, the gardener's.</summary>
    public Person ActsAs(GardenBook book) =>
        People(book).OrderBy(person => person.Role).FirstOrDefault()
        ?? book.People.FirstOrDefault(person => person.Role == PersonRole.Gardener)
        ?? book.People[0];

    /// <summary>Sees the whole plan, and who does what: all but helpers.</summary>
    public bool SeesAll(GardenBook book, IReadOnlyList<GardenBook> books) => IsKeeper(books) || RolesIn(book).Contains(PersonRole.Gardener);

    private IEnumerable<PersonRole> RolesIn(GardenBook book) => People(book).Select(person => person.Role);

    private IEnumerable<Person> People(GardenBook book) =>
        Kind == VisitorKind.Mail ? book.People.Where(person => string.Equals(person.Email, Email, StringComparison.OrdinalIgnoreCase)) : [];
}
