using StormClock.Core.Acknowledgements;
using StormClock.Core.Garden;
using StormClock.Core.Stages;
using StormClock.Service.Desk;
using StormClock.Service.Messages;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Web;
using StormClock.Service.Wording;

namespace StormClock.Service.Replies;

/// <summary>
/// Takes an answer by mail through the same door as a link: the message's own mark says whose it is and which jobs it shows. Who
/// the mail says to come from counts for nothing, as with a link; only words above the quoted part do.
/// </summary>
internal sealed class ReplyDesk(StormStore store, GardenShelf shelf, IJobBook book, AckKeyRing keys)
{
    /// <summary>An older mail without a mark is not worth a word.</summary>
    private static readonly Duration Fresh = Duration.FromDays(1);

    /// <summary>The mailbox's clock and ours may differ by so much; within it the later one read is the later word.</summary>
    private static readonly Duration ClockError = Duration.FromMinutes(5);

    /// <param name="arrived">When the mailbox got it: what was said since stands.</param>
    public async Task<ReplyVerdict> TakeAsync(ReplyMail mail, Instant arrived, Instant now)
    {
        if (ProofOf(mail) is not { } letterId) return Unproved(mail, arrived, now);
        if (store.Read(reader => OutboxTable.Find(reader, letterId)) is not { } letter) return new(ReplyOutcome.Unknown);
        if (mail.IsAutomatic) return new(ReplyOutcome.Automatic, letter);
        if (store.Read(reader => ReplyMarks.Has(reader, ReplyMarks.IdOf(letter.Id, mail.Id)))) return new(ReplyOutcome.Repeated, letter);
        if (letter.Moment + LinkMaker.Life <= now) return Not(ReplyOutcome.TooOld, letter, speech => speech.Say("reply.too-old"));

        var said = ReplyText.Read(mail.Lines, letter.Message.Text);
        if (said.Commands.Count == 0) return Not(ReplyOutcome.NotUnderstood, letter, Unread(said));
        if (said.Commands.Any(command => command.Verb == ReplyVerb.In)) return await IndoorsAsync(letter, said, now);
        return letter.JobIds.Count == 0
            ? Not(ReplyOutcome.NothingToAnswer, letter, speech => speech.Say("reply.nothing-to-answer"))
            : await WorkAsync(letter, said.Commands, arrived, now);
    }

    private string? ProofOf(ReplyMail mail) =>
        mail.AnswersTo.Select(OutboxIds.WordOf).OfType<string>().Select(word => ReplyProof.Read(word, keys.Keys)).FirstOrDefault(letterId => letterId is not null);

    private async Task<ReplyVerdict> WorkAsync(OutboxEntry letter, IReadOnlyList<ReplyCommand> commands, Instant arrived, Instant now)
    {
        var wish = ReplyWish.Of(commands, letter.JobIds.Count);
        if (wish.Contradicts) return Not(ReplyOutcome.NotUnderstood, letter, speech => speech.Say("reply.contradicts"));
        if (wish.Work.Count == 0) return Not(ReplyOutcome.NotUnderstood, letter, Strange(wish.Unknown, letter));

        var newer = store.Read(reader => JobStates.OfEpisode(reader, letter.GardenId, letter.EpisodeId)).Where(state => state.At > arrived + ClockError).Select(state => state.JobId).ToHashSet();
        var (taken, overtaken) = (new List<(ReplyVerb Verb, IReadOnlyList<int> Numbers)>(), false);
        foreach (var (verb, numbers) in wish.Work)
        {
            var open = numbers.Where(number => !newer.Contains(letter.JobIds[number - 1])).ToList();
            overtaken |= open.Count < numbers.Count;
            if (open.Count == 0 || !await AnswerAsync(letter, verb, [.. open.Select(number => letter.JobIds[number - 1])], now)) continue;
            taken.Add((verb, open));
        }

        if (wish.Unknown.Count > 0) return new(ReplyOutcome.TakenInPart, letter, Tell(letter, taken, Strange(wish.Unknown, letter)));
        return new(taken.Count > 0 ? ReplyOutcome.Taken : overtaken ? ReplyOutcome.Overtaken : ReplyOutcome.Unknown, letter);
    }

    /// <summary>False when none of the jobs is known any more.</summary>
    private async Task<bool> AnswerAsync(OutboxEntry letter, ReplyVerb verb, IReadOnlyList<string> jobs, Instant now)
    {
        var answer = verb switch
        {
            ReplyVerb.Done => JobAnswer.Done,
            ReplyVerb.Cannot => JobAnswer.Cannot,
            ReplyVerb.Later => JobAnswer.Later,
            _ => throw new ArgumentOutOfRangeException(nameof(verb), verb, "Says nothing of a job."),
        };
        var all = jobs.Count > 1 && jobs.Count == letter.JobIds.Count;
        var any = false;
        foreach (var token in all ? [Token(letter, AckPurpose.All, AckList.Hash(jobs))] : jobs.Select(job => Token(letter, AckPurpose.Job, job)))
        {
            if (await book.LookAsync(token, now) is null) continue;
            await book.AnswerAsync(token, answer, now);
            any = true;
        }

        return any;
    }

    private async Task<ReplyVerdict> IndoorsAsync(OutboxEntry letter, ReplyText said, Instant now)
    {
        if (said.Commands.Count > 1) return Not(ReplyOutcome.NotUnderstood, letter, Unread(said));

        var token = Token(letter, AckPurpose.Indoors, "");
        if (await book.LookAsync(token, now) is not { } page) return new(ReplyOutcome.Unknown, letter);
        if (page.Stage != Stage.GardenClosed) return Not(ReplyOutcome.NotClosed, letter, speech => speech.Say("reply.not-closed"));

        await book.AnswerAsync(token, JobAnswer.Done, now);
        return new(ReplyOutcome.Taken, letter);
    }

    /// <summary>
    /// Nothing is done on somebody's word alone. A person of a garden who clearly meant to answer is told how; whoever else writes
    /// here hears nothing.
    /// </summary>
    private ReplyVerdict Unproved(ReplyMail mail, Instant arrived, Instant now)
    {
        var (garden, person) = shelf.Books.SelectMany(garden => garden.People.Select(person => (garden, person)))
            .FirstOrDefault(one => string.Equals(one.person.Email, mail.From, StringComparison.OrdinalIgnoreCase));
        var meant = ReplyText.Read(mail.Lines, "") is { Commands.Count: > 0, FirstWords: { } first } && ReplyCommand.Read(first) is not null;
        return person is null || mail.IsAutomatic || !meant || now - arrived > Fresh
            ? new(ReplyOutcome.NoProof)
            : new(ReplyOutcome.NoProof, Tell: Told(garden, person, person.Email!, [], speech => speech.Say("reply.no-proof")));
    }

    private static AckToken Token(OutboxEntry letter, AckPurpose purpose, string subject) =>
        new(purpose, letter.GardenId, letter.EpisodeId, letter.PersonId, subject, letter.Moment + LinkMaker.Life);

    private static Func<Speech, string> Unread(ReplyText said) => speech => said.FirstWords is { } first
        ? speech.Say("reply.not-understood", ("words", Plain.Cut(first, 60)))
        : speech.Say("reply.no-words");

    private static Func<Speech, string> Strange(IReadOnlyList<int> numbers, OutboxEntry letter) => speech =>
    {
        var named = string.Join(", ", numbers.Take(10));
        return letter.JobIds.Count == 1 ? speech.Say("reply.no-number.one", ("numbers", named)) : speech.Say("reply.no-number", ("numbers", named), ("count", letter.JobIds.Count));
    };

    private ReplyVerdict Not(ReplyOutcome outcome, OutboxEntry letter, Func<Speech, string> missing) => new(outcome, letter, Tell(letter, [], missing));

    /// <summary>Null when the book has the person no more, or without an address.</summary>
    private ReplyTold? Tell(OutboxEntry letter, IReadOnlyList<(ReplyVerb Verb, IReadOnlyList<int> Numbers)> taken, Func<Speech, string> missing) =>
        shelf.Find(letter.GardenId) is { } garden && garden.People.FirstOrDefault(person => person.Id == letter.PersonId) is { Email: { } address } person
            ? Told(garden, person, address, taken, missing)
            : null;

    private static ReplyTold Told(GardenBook garden, Person person, string address, IReadOnlyList<(ReplyVerb Verb, IReadOnlyList<int> Numbers)> taken, Func<Speech, string> missing)
    {
        var speech = Speech.Of(person, garden.Units);
        return new(person.Name, address, [.. taken.Select(one => $"{speech.Word("reply.verb", one.Verb)} {string.Join(", ", one.Numbers)}")], missing(speech), speech);
    }
}
