using Microsoft.AspNetCore.Http.HttpResults;
using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Books.Edits;
using StormClock.Service.Desk;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Visits;
using StormClock.Service.Web.Garden;
using StormClock.Service.Web.Views.Keeper;
using StormClock.Service.Wording;

namespace StormClock.Service.Web.Keeper;

/// <summary>The people of a garden, whom the keeper adds, changes and takes out.</summary>
internal sealed class PeopleEndpoints(KeeperDoor door, GardenShelf shelf, StormStore store, BookDesk books, PeopleReach reach)
{
    public IResult People(string garden, HttpContext context)
    {
        if (door.Refuse(context) is { } refusal) return refusal;
        return shelf.Find(garden) is { } book ? PeoplePage(context, book, [], PersonForm.Blank) : Notices.NotForYou(context.Request);
    }

    public IResult Person(string garden, string person, HttpContext context)
    {
        if (door.Refuse(context) is { } refusal) return refusal;
        return shelf.Find(garden) is { } book && Find(book, person) is { } found ? PersonPage(context, book, found, [], null) : Notices.NotForYou(context.Request);
    }

    public async Task<IResult> AddAsync(string garden, HttpContext context)
    {
        if (door.Refuse(context) is { } refusal) return refusal;
        if (await door.FormAsync(context) is not { } form) return Notices.FormStale(context.Request);
        if (shelf.Find(garden) is not { } book) return Notices.NotForYou(context.Request);
        var typed = PersonForm.Typed(form);
        var id = "";
        return await books.DoAsync(
            context, By(context, book), form,
            now =>
            {
                id = FreshId(now, typed.GetValueOrDefault("name", ""));
                var read = PersonForm.Read(now, null, id, typed);
                return read.Value is { } person ? BookChange.Put(now, person, null) : new BookOutcome<Person>.Refused(read.Faults);
            },
            () => new(See(context, $"../{garden}?told={id}")),
            faults => PeoplePage(context, book, faults, typed),
            _ => Notices.FormStale(context.Request));
    }

    /// <summary>Takes what was typed, or takes the person out, as they were shown; shows both versions where somebody changed them meanwhile.</summary>
    public async Task<IResult> ChangeAsync(string garden, string person, HttpContext context)
    {
        if (door.Refuse(context) is { } refusal) return refusal;
        if (await door.FormAsync(context) is not { } form) return Notices.FormStale(context.Request);
        if (shelf.Find(garden) is not { } book) return Notices.NotForYou(context.Request);
        var mark = new EntryMark(EntryForm.Line(form["mark"].ToString()));
        var remove = form["press"] == "remove";
        var typed = remove ? null : PersonForm.Typed(form);
        var by = By(context, book);
        return await books.DoAsync(
            context, by, form,
            now => Changed(now, person, typed, mark, by.Speech),
            async () =>
            {
                if (remove) await ForgetDevicesAsync(garden, person);
                return See(context, remove ? $"../../{garden}?gone=1" : $"../../{garden}?told={person}");
            },
            faults => Find(book, person) is { } shown ? PersonPage(context, book, shown, faults, typed, mark) : PeoplePage(context, book, faults, typed ?? PersonForm.Blank),
            now => now is null
                ? PeoplePage(context, shelf.Find(garden) ?? book, [by.Speech.Say("people.gone-meanwhile")], typed ?? PersonForm.Blank)
                : PersonPage(context, shelf.Find(garden) ?? book, now, [], typed, isConflict: true));
    }

    /// <param name="typed">Null takes the person out.</param>
    private BookOutcome<Person> Changed(GardenBook book, string id, IReadOnlyDictionary<string, string>? typed, EntryMark mark, Speech speech)
    {
        if (Find(book, id) is not { } before) return new BookOutcome<Person>.Conflict(null);
        if (EntryMark.Of(before) != mark) return new BookOutcome<Person>.Conflict(before);

        // Before all that a file may say: who is told why must not hear of work for two instead.
        if (PeopleRules.Broken(book, Would(book, before, typed), reach.Of) is { } why) return new BookOutcome<Person>.Refused([ReadFault.At(1, speech.Say(why))]);
        if (typed is null) return BookChange.RemovePerson(book, id, mark);
        var read = PersonForm.Read(book, before, id, typed);
        return read.Value is { } changed ? BookChange.Put(book, changed, mark) : new BookOutcome<Person>.Refused(read.Faults);
    }

    /// <summary>The book with what counts for <see cref="PeopleRules"/> changed.</summary>
    private static GardenBook Would(GardenBook book, Person before, IReadOnlyDictionary<string, string>? typed)
    {
        if (typed is null) return book with { People = [.. book.People.Where(person => person != before)] };
        var email = typed.GetValueOrDefault("email", before.Email ?? "").Trim();
        var after = before with { Role = Tokens.Roles.GetValueOrDefault(typed.GetValueOrDefault("role", ""), before.Role), Email = email.Length > 0 ? email : null };
        return book with { People = [.. book.People.Select(person => person == before ? after : person)] };
    }

    /// <summary>An id that nobody has, nor had: a link or a device of whoever was taken out must not open what is somebody else's.</summary>
    private string FreshId(GardenBook book, string name)
    {
        var known = store.Read(reader => OutboxTable.OfGarden(reader, book.Id).Select(entry => entry.PersonId)
            .Concat(Subscriptions.OfGarden(reader, book.Id).Select(device => device.PersonId)).ToHashSet());
        return EntryIds.Free(EntryIds.Of(name, "person"), [.. book.People.Select(person => person.Id).Union(known)]);
    }

    private Task ForgetDevicesAsync(string garden, string person) => store.WriteAsync(transaction =>
    {
        foreach (var device in Subscriptions.OfGarden(transaction, garden).Where(device => device.PersonId == person)) Subscriptions.Remove(transaction, device.Id);
    });

    private static Person? Find(GardenBook book, string id) => book.People.FirstOrDefault(person => person.Id == id);

    private static (string Garden, string Name, Speech Speech) By(HttpContext context, GardenBook book) =>
        (book.Id, Doorkeeper.Of(context).ActsAs(book).Name, BrowserSpeech.Of(context.Request));

    /// <summary>Whoever took themselves out, or is keeper no more, has nothing left to see here.</summary>
    private StatusCodeHttpResult See(HttpContext context, string where) => GardenDoor.See(context, door.IsOpenTo(context) ? where : Ways.Up(context.Request));

    private static RazorComponentResult<PeopleView> PeoplePage(HttpContext context, GardenBook book, IReadOnlyList<string> faults, IReadOnlyDictionary<string, string> typed) => new(new Dictionary<string, object?>
    {
        [nameof(PeopleView.Speech)] = BrowserSpeech.Of(context.Request),
        [nameof(PeopleView.Up)] = Ways.Up(context.Request),
        [nameof(PeopleView.Book)] = book,
        [nameof(PeopleView.Faults)] = faults,
        [nameof(PeopleView.Typed)] = typed,
        [nameof(PeopleView.Told)] = Find(book, context.Request.Query["told"].ToString())?.Name,
        [nameof(PeopleView.IsGone)] = context.Request.Query.ContainsKey("gone"),
    });

    /// <param name="typed">Of a form that was not taken; null for what the book says.</param>
    private static RazorComponentResult<PersonView> PersonPage(
        HttpContext context, GardenBook book, Person person, IReadOnlyList<string> faults, IReadOnlyDictionary<string, string>? typed, EntryMark? mark = null, bool isConflict = false) => new(new Dictionary<string, object?>
    {
        [nameof(PersonView.Speech)] = BrowserSpeech.Of(context.Request),
        [nameof(PersonView.Up)] = Ways.Up(context.Request),
        [nameof(PersonView.Book)] = book,
        [nameof(PersonView.Person)] = person,
        [nameof(PersonView.Faults)] = faults,
        [nameof(PersonView.Typed)] = typed ?? PersonForm.Of(person, book),
        [nameof(PersonView.Mark)] = (mark ?? EntryMark.Of(person)).ToString(),
        [nameof(PersonView.IsConflict)] = isConflict,
    });
}
