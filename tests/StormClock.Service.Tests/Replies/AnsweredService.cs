using Microsoft.Extensions.DependencyInjection;
using StormClock.Core.Acknowledgements;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Delivery;
using StormClock.Service.Desk;
using StormClock.Service.Outbox;
using StormClock.Service.Replies;
using StormClock.Service.Store;
using StormClock.Service.Tests.EndToEnd;
using StormClock.Service.Tests.Outbox;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Replies;

/// <summary>The real service with a mailbox on this machine, and one letter with five jobs that it has sent.</summary>
internal sealed class AnsweredService : IAsyncDisposable
{
    public static readonly Instant Begin = Instant.FromUtc(2027, 9, 20, 12, 0);

    /// <summary>Never by itself: a test looks when it wants to.</summary>
    private static readonly Duration Never = Duration.FromDays(400);

    private readonly bool ownsMailbox;

    private AnsweredService(bool ownsMailbox, VirtualService service, MailboxServer mailbox, TestChannel mail, GardenBook garden, OutboxEntry letter)
    {
        this.ownsMailbox = ownsMailbox;
        Service = service;
        Mailbox = mailbox;
        Mail = mail;
        Garden = garden;
        Letter = letter;
    }

    public VirtualService Service { get; }

    public MailboxServer Mailbox { get; }

    public TestChannel Mail { get; }

    public GardenBook Garden { get; }

    public OutboxEntry Letter { get; }

    public static async Task<AnsweredService> StartAsync(string? data = null, MailboxServer? mailbox = null, string? moveTo = null, double timeoutS = 10)
    {
        var owns = mailbox is null;
        mailbox ??= new MailboxServer();
        var garden = GardenReader.Read(await File.ReadAllTextAsync(Path.Combine(ConfigFiles.Folder, "practice", "garden-tern-hook.yaml"), TestContext.Current.CancellationToken), "tern-hook").Value!;
        var mail = new TestChannel("email", DeliveryResult.Delivered);
        var service = await VirtualService.StartAsync(
            Begin, new GardenShelf([garden]), _ => [], mail, Duration.FromMinutes(30), practice: true, data, plan => plan with { Replies = new(mailbox.Mailbox(moveTo, timeoutS), Never) });
        var letter = await LetterAsync(service, garden, "MainWork/1", [.. garden.Jobs.Take(5).Select(job => job.Id)], Begin);
        return new(owns, service, mailbox, mail, garden, letter);
    }

    /// <summary>A sent letter to the gardener, in the outbox under the mark that the service's own key gives it.</summary>
    public static async Task<OutboxEntry> LetterAsync(VirtualService service, GardenBook garden, string occasion, IReadOnlyList<string> jobs, Instant moment)
    {
        var person = garden.People.First(person => person.Role == PersonRole.Gardener);
        var key = new Core.Reminders.ReminderKey(garden.Id, "e1", person.Id, Core.Reminders.ReminderReason.StageChanged, occasion, "email");
        var id = OutboxIds.For(key, "test").EntryId;
        var proof = ReplyProof.Sign(id, service.Services.GetRequiredService<AckKeyRing>().Newest);
        var letter = new OutboxEntry(
            id, key.ToString(), "email", garden.Id, person.Id, "StageChanged", "test", jobs,
            new(id, OutboxIds.Named(proof), "thread@stormclock.invalid", person.Name, person.Email!, "Stop by Wed 23:45 EDT: Main work", "Unsafe wind could come as early as Wed 23:45 EDT.\n\n1. Strap: the arbor\n", "<p></p>", moment),
            moment, moment, moment + Duration.FromHours(6), false, OutboxState.Sent, 1, moment, moment, null);
        await service.Store.WriteAsync(
            transaction =>
            {
                if (OutboxTable.Find(transaction, id) is null) OutboxTable.Insert(transaction, letter);
            },
            TestContext.Current.CancellationToken);
        return letter;
    }

    public async Task LookAsync() => await Service.Services.GetRequiredService<ReplyRound>().LookAsync(TestContext.Current.CancellationToken);

    /// <summary>Puts one mail into the box and looks.</summary>
    public async Task TakeAsync(byte[] mail)
    {
        Mailbox.Put(mail, Service.Now);
        await LookAsync();
    }

    /// <summary>What is known of the letter's jobs by their numbers, e.g. <c>1 Done, 3 Later</c>.</summary>
    public string States()
    {
        var states = Service.Store.Read(reader => JobStates.OfEpisode(reader, Garden.Id, "e1")).ToDictionary(state => state.JobId);
        return string.Join(", ", Letter.JobIds.Index().Where(job => states.ContainsKey(job.Item)).Select(job => $"{job.Index + 1} {states[job.Item].Progress}"));
    }

    public IReadOnlyList<OutboxEntry> Notices() => Service.Outbox(ReplyNotice.Owner);

    public async ValueTask DisposeAsync()
    {
        await Service.DisposeAsync();
        if (ownsMailbox) await Mailbox.DisposeAsync();
    }
}
