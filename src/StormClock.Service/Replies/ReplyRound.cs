using MailKit;
using MailKit.Net.Imap;
using StormClock.Service.Delivery.Email;
using StormClock.Service.Desk;
using StormClock.Service.Messages;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Wakeups;

namespace StormClock.Service.Replies;

/// <summary>
/// One look for answers by mail: take each, keep that it was taken, then mark it in the mailbox. A crash in between takes it
/// again, which changes nothing, or leaves it to be marked at the next look; none is skipped.
/// </summary>
internal sealed class ReplyRound(ReplyPlan plan, ReplyDesk desk, ReplyWatch watch, StormStore store, GardenShelf shelf, Turns turns, Journal journal, IClock clock)
{
    /// <summary>A whole look may take as many timeouts, against a server that answers one byte at a time.</summary>
    private const int TimeoutsInAll = 10;

    /// <summary>Short mails to one address within a day: somebody learns by them, or a loop runs dead.</summary>
    private const int MostNotices = 3;

    public async Task LookAsync(CancellationToken cancellation)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(plan.Mailbox.Timeout.ToTimeSpan() * TimeoutsInAll);
        try
        {
            using var session = await ReplySession.OpenAsync(plan.Mailbox, limit.Token);
            await ReadAsync(session, limit.Token);
            await session.CloseAsync(limit.Token);
            if (watch.Good(clock.GetCurrentInstant())) Tell("answers are read again");
        }
        catch (Exception fault) when (IsOutside(fault) && !cancellation.IsCancellationRequested)
        {
            var why = fault switch
            {
                OperationCanceledException => "the server took too long",
                FolderNotFoundException { FolderName: var name } => $"there is no folder {name}: make it, or name another",
                _ => Plain.Cut(fault.Message, 200),
            };
            if (watch.Failed(clock.GetCurrentInstant(), why)) Tell($"{why}; nothing in it is lost, and it is tried again");
        }
    }

    private async Task ReadAsync(ReplySession session, CancellationToken cancellation)
    {
        var kept = store.Read(reader => MailboxStates.Find(reader, plan.Mailbox.Name));
        var uids = await session.NewAsync(kept, clock.GetCurrentInstant(), cancellation);
        var state = kept?.Validity == session.Validity ? kept : new(session.Validity, 0, []);
        var answered = false;
        foreach (var head in uids.Count > 0 ? await session.HeadsAsync(uids, IsKnown, cancellation) : [])
        {
            var bytes = head.MayAnswer ? await session.BeginningAsync(head.Uid, cancellation) : null;
            state = state with { LastUid = Math.Max(state.LastUid, head.Uid) };
            if (bytes is null) continue;
            (state, var told) = await TakeAsync(head, bytes, state);
            answered |= told;
        }

        // Mails passed over need not be looked for again; those that wait for the next look come after the last one taken.
        if (uids.Count == 0) state = state with { LastUid = Math.Max(state.LastUid, session.Newest) };
        if (answered) await turns.TakeAsync(listen: false, cancellation);
        await session.SettleAsync(state.Unmarked, cancellation);
        state = state with { Unmarked = [] };
        if (uids.Count > 0 || kept is null || kept.Unmarked.Count > 0 || kept.LastUid != state.LastUid || kept.Validity != state.Validity)
            await store.WriteAsync(transaction => MailboxStates.Put(transaction, plan.Mailbox.Name, state), cancellation);
    }

    /// <summary>The state with this mail settled, and whether its writer is told something.</summary>
    private async Task<(MailboxState State, bool Told)> TakeAsync(FoundMail found, byte[] bytes, MailboxState state)
    {
        var now = clock.GetCurrentInstant();
        var mail = ReplyMail.Read(bytes);
        var verdict = mail is null ? new(ReplyOutcome.Unreadable) : await desk.TakeAsync(mail, found.Arrived, now);
        var next = verdict.IsSettled ? state with { Unmarked = [.. state.Unmarked, found.Uid] } : state;
        var told = await store.WriteAsync(transaction =>
        {
            MailboxStates.Put(transaction, plan.Mailbox.Name, next);
            return mail is not null && Settle(transaction, verdict, mail, now);
        });
        if (verdict.Outcome is not (ReplyOutcome.Taken or ReplyOutcome.NoProof) || told) Report(verdict, told, now);
        return (next, told);
    }

    /// <summary>Keeps that this answer is settled, and writes the short mail about it where there is one to write.</summary>
    private static bool Settle(StoreTransaction transaction, ReplyVerdict verdict, ReplyMail mail, Instant now)
    {
        var id = ReplyMarks.IdOf(verdict.Letter?.Id ?? "", mail.Id);
        if (ReplyMarks.Has(transaction, id) || (!verdict.IsSettled && verdict.Tell is null)) return false;

        var tell = verdict.Tell is { } wanted && ReplyMarks.ToldSince(transaction, wanted.ToAddress, now - Duration.FromDays(1)) < MostNotices ? wanted : null;
        ReplyMarks.Add(transaction, new(id, now, verdict.Outcome.ToString(), tell?.ToAddress));
        if (tell is not null) OutboxTable.Insert(transaction, ReplyNotice.Write(verdict, tell, id, now));
        return tell is not null;
    }

    private bool IsKnown(string address) => shelf.Books.Any(garden => garden.People.Any(person => string.Equals(person.Email, address, StringComparison.OrdinalIgnoreCase)));

    private void Report(ReplyVerdict verdict, bool told, Instant now) => journal.Write(new(
        now, "reply", verdict.Letter?.GardenId,
        Reason: $"{Words(verdict.Outcome)}{(told ? ", and its writer is told" : "")}", To: verdict.Letter?.PersonId, Subject: verdict.Letter is { } letter ? $"answer to \"{letter.Message.Subject}\"" : "a mail in the mailbox for answers"));

    private void Tell(string what) => journal.Write(new(clock.GetCurrentInstant(), "trouble", Reason: what, Subject: $"mailbox for answers {plan.Mailbox.Name}"));

    private static string Words(ReplyOutcome outcome) => outcome switch
    {
        ReplyOutcome.Taken => "taken",
        ReplyOutcome.TakenInPart => "taken in part",
        ReplyOutcome.Overtaken => "not taken, something newer was said since",
        ReplyOutcome.NotUnderstood => "not understood",
        ReplyOutcome.NothingToAnswer => "the message asks for no work",
        ReplyOutcome.NotClosed => "\"in\", but the garden is not closed",
        ReplyOutcome.TooOld => "the message is too old",
        ReplyOutcome.Unknown => "the message or its jobs are known no more",
        ReplyOutcome.Repeated => "taken before",
        ReplyOutcome.Automatic => "written by a machine, left alone",
        ReplyOutcome.NoProof => "names no message of ours",
        ReplyOutcome.Unreadable => "cannot be read, left alone",
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "Not an outcome."),
    };

    private static bool IsOutside(Exception fault) =>
        SmtpFaults.IsOutside(fault) || fault is CommandException or FolderNotFoundException or StoreUnavailableException;
}
