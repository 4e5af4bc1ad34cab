using MailKit;
using MailKit.Net.Imap;
using MailKit.Search;
using MimeKit;
using StormClock.Service.Delivery.Email;
using StormClock.Service.Outbox;
using StormClock.Service.Store;
using StormClock.Service.Web;

namespace StormClock.Service.Replies;

/// <param name="MayAnswer">Its head names a message of ours, or comes from somebody in a garden: only then it is opened.</param>
internal sealed record FoundMail(uint Uid, Instant Arrived, bool MayAnswer);

/// <summary>
/// One look into the mailbox: one connection, closed at its end. Mails are read without marking them; only what is settled is
/// marked as read, or moved, at the end.
/// </summary>
internal sealed class ReplySession : IDisposable
{
    /// <summary>More wait for the next look.</summary>
    private const int MostMails = 100;

    private static readonly FetchRequest Heads = new(
        MessageSummaryItems.UniqueId | MessageSummaryItems.InternalDate, [HeaderId.InReplyTo, HeaderId.References, HeaderId.From]);

    private readonly ImapClient client = new();
    private readonly ReplyMailbox mailbox;
    private readonly IMailFolder folder;

    private ReplySession(ReplyMailbox mailbox, ImapClient client, IMailFolder folder)
    {
        this.mailbox = mailbox;
        this.client = client;
        this.folder = folder;
    }

    /// <summary>Changes whenever the server has numbered its mails anew.</summary>
    public uint Validity => folder.UidValidity;

    public static async Task<ReplySession> OpenAsync(ReplyMailbox mailbox, CancellationToken cancellation)
    {
        var client = new ImapClient { Timeout = (int)mailbox.Timeout.TotalMilliseconds, CheckCertificateRevocation = false };
        try
        {
            client.ServerCertificateValidationCallback = CertificateTrust.Check(CertificateTrust.Load(mailbox.TrustedCertificateFile), checkRevocation: false);
            await client.ConnectAsync(mailbox.Host, mailbox.Port, mailbox.Security.SocketOptions(), cancellation);
            await client.AuthenticateAsync(mailbox.User, mailbox.Password, cancellation);
            var folder = await FolderAsync(client, mailbox.Folder, cancellation);
            await folder.OpenAsync(FolderAccess.ReadOnly, cancellation);
            return new(mailbox, client, folder);
        }
        catch
        {
            client.Dispose();
            throw;
        }
    }

    /// <summary>
    /// What has come since the state was kept, oldest first. Without a state, or where mails were numbered anew, everything as old
    /// as an answer may be: what was settled is known by its own id.
    /// </summary>
    public async Task<IReadOnlyList<uint>> NewAsync(MailboxState? state, Instant now, CancellationToken cancellation)
    {
        SearchQuery query = state is null || state.Validity != Validity
            ? SearchQuery.DeliveredAfter((now - LinkMaker.Life).ToDateTimeUtc().Date)
            : SearchQuery.Uids(new UniqueIdRange(new UniqueId(state.LastUid + 1), UniqueId.MaxValue));
        var found = await folder.SearchAsync(query, cancellation);

        // A range to the end always holds the last mail, also when that is an old one.
        return [.. found.Select(uid => uid.Id).Where(uid => state?.Validity != Validity || uid > state.LastUid).Order().Take(MostMails)];
    }

    /// <summary>The number that the newest mail had when the mailbox was opened, at the least; 0 when the server does not say.</summary>
    public uint Newest => folder.UidNext is { Id: > 0 } next ? next.Id - 1 : 0;

    /// <param name="known">Whether an address is that of somebody in a garden.</param>
    public async Task<IReadOnlyList<FoundMail>> HeadsAsync(IReadOnlyList<uint> uids, Func<string, bool> known, CancellationToken cancellation)
    {
        var heads = await folder.FetchAsync([.. uids.Select(uid => new UniqueId(uid))], Heads, cancellation);
        return [.. heads.OrderBy(head => head.UniqueId.Id).Select(head => new FoundMail(
            head.UniqueId.Id,
            head.InternalDate is { } date ? Instant.FromDateTimeOffset(date) : Instant.MinValue,
            head.Headers is { } lines && MayAnswer(lines, known)))];
    }

    /// <summary>The first bytes of a mail; null when it has been taken away meanwhile.</summary>
    public async Task<byte[]?> BeginningAsync(uint uid, CancellationToken cancellation)
    {
        try
        {
            await using var stream = await folder.GetStreamAsync(new UniqueId(uid), 0, ReplyMail.MostBytes, cancellation);
            using var copy = new MemoryStream();
            await stream.CopyToAsync(copy, cancellation);
            return copy.ToArray();
        }
        catch (MessageNotFoundException)
        {
            return null;
        }
    }

    /// <summary>Marks as read, and moves where the settings say so. Numbers that are no more are passed over by the server.</summary>
    public async Task SettleAsync(IReadOnlyList<uint> uids, CancellationToken cancellation)
    {
        if (uids.Count == 0) return;

        IList<UniqueId> all = [.. uids.Select(uid => new UniqueId(uid))];
        if (await folder.OpenAsync(FolderAccess.ReadWrite, cancellation) != FolderAccess.ReadWrite) throw new NotSupportedException($"the folder {mailbox.Folder} may only be read, so answers cannot be marked");
        await folder.AddFlagsAsync(all, MessageFlags.Seen, silent: true, cancellation);
        if (mailbox.MoveTo is { } other) await folder.MoveToAsync(all, await FolderAsync(client, other, cancellation), cancellation);
    }

    public async Task CloseAsync(CancellationToken cancellation) => await client.DisconnectAsync(quit: true, cancellation);

    public void Dispose() => client.Dispose();

    private static async Task<IMailFolder> FolderAsync(ImapClient client, string name, CancellationToken cancellation) =>
        string.Equals(name, "INBOX", StringComparison.OrdinalIgnoreCase) ? client.Inbox! : await client.GetFolderAsync(name, cancellation);

    private static bool MayAnswer(HeaderList head, Func<string, bool> known)
    {
        var named = $"{head[HeaderId.InReplyTo]} {head[HeaderId.References]}";
        return OutboxIds.MayName(named)
            || (InternetAddressList.TryParse(head[HeaderId.From] ?? "", out var from) && from.Mailboxes.Any(sender => known(sender.Address)));
    }
}
