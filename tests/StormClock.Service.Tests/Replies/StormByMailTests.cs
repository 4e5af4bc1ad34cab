using Microsoft.Extensions.DependencyInjection;
using StormClock.Core.Formats;
using StormClock.Core.Garden;
using StormClock.Core.Stages;
using StormClock.Service.Books;
using StormClock.Service.Delivery;
using StormClock.Service.Desk;
using StormClock.Service.Feeds;
using StormClock.Service.Outbox;
using StormClock.Service.Replies;
using StormClock.Service.Store;
using StormClock.Service.Tests.EndToEnd;
using StormClock.Service.Tests.Outbox;
using StormClock.Service.Tests.Practice;

namespace StormClock.Service.Tests.Replies;

/// <summary>The practice storm with no address that phones can reach: everybody answers by mail, from first to last.</summary>
public class StormByMailTests
{
    private static readonly Instant Begin = Instant.FromUtc(2027, 9, 20, 3, 0);

    [Fact]
    public async Task Storm_PeopleAnswerByMail_WorkIsMarkedAndTheGardenClosesWithEverybodyIn()
    {
        await using var mailbox = new MailboxServer();
        var garden = GardenReader.Read(await File.ReadAllTextAsync(Path.Combine(ConfigFiles.Folder, "practice", "garden-tern-hook.yaml"), TestContext.Current.CancellationToken), "tern-hook").Value!;
        var storm = Directory.GetFiles(Path.Combine(ConfigFiles.Folder, "practice", "storm")).Where(file => Path.GetExtension(file) is ".txt" or ".xml")
            .Select(file => new RawMessage(file, File.ReadAllBytes(file))).Select(raw => (MessageReader.Read(raw.Bytes).Value!.Issued, raw)).OrderBy(message => message.Issued).ToList();
        await using var service = await VirtualService.StartAsync(
            Begin, new GardenShelf([garden]), clock => [new ReplayFeed(storm, clock)], new TestChannel("email", DeliveryResult.Delivered), Duration.FromMinutes(30), practice: true,
            change: plan => plan with { Replies = new(mailbox.Mailbox("Answers"), Duration.FromDays(400)) });
        var round = service.Services.GetRequiredService<ReplyRound>();
        var desk = service.Services.GetRequiredService<GardenDesk>();

        // Each person answers each letter once, when the work of its plan would be done; and the closed garden at once.
        var answers = new SortedDictionary<(Instant At, string Letter, int Number), OutboxEntry>();
        var seen = new HashSet<string>();
        Stage Stage() => desk.Latest[garden.Id].Standing.Stage.Stage;
        for (var step = 0; step < 2 * 24 * 5 && Stage() != Core.Stages.Stage.Recheck; step++)
        {
            await service.AdvanceAsync(Duration.FromMinutes(30));
            foreach (var letter in service.Outbox(garden.Id).Where(entry => entry.State == OutboxState.Sent && seen.Add(entry.Id)))
            {
                Assert.DoesNotContain("http", letter.Message.Text, StringComparison.Ordinal);
                if (letter.Message.Text.Contains("When you are in, answer this mail with: in.", StringComparison.Ordinal)) answers[(service.Now, letter.Id, 0)] = letter;
                var planned = desk.Latest[garden.Id].Plan?.Jobs.ToDictionary(job => job.Job.Id, job => job.End) ?? [];
                foreach (var (at, job) in letter.JobIds.Index())
                {
                    // The numbers are those that its words show.
                    Assert.Contains($"\n{at + 1}. ", letter.Message.Text, StringComparison.Ordinal);
                    if (planned.TryGetValue(job, out var end)) answers[(end, letter.Id, at + 1)] = letter;
                }
            }

            foreach (var ((at, _, number), letter) in answers.Where(answer => answer.Key.At <= service.Now).ToList())
            {
                answers.Remove((at, letter.Id, number));
                mailbox.Put(RawMail.Answer(letter, number == 0 ? "I'm in!" : $"Done {number}.", id: $"{letter.Id}.{number}@phone.example"), service.Now);
            }

            await round.LookAsync(TestContext.Current.CancellationToken);
        }

        Assert.Equal(Core.Stages.Stage.Recheck, Stage());
        var said = service.Said.ToList();
        Assert.True(said.Count(entry => entry.Kind == "done") >= 20, $"most jobs are reported by mail, and {said.Count(entry => entry.Kind == "done")} were");
        Assert.Contains(said, entry => entry.Stage == Core.Stages.Stage.GardenClosed);
        Assert.DoesNotContain(said, entry => entry.Kind == "trouble");
        Assert.Empty(service.Outbox(ReplyNotice.Owner));
        Assert.Empty(mailbox.Mails);

        // Both people said that they are in, and that is kept as a press of the link would be.
        var episode = desk.Latest[garden.Id].Standing.Stage.EpisodeId!;
        Assert.All(garden.People.Where(person => person.Email is not null), person =>
            Assert.NotEmpty(service.Store.Read(reader => Presses.OfToken(reader, Fingerprint.Of("Indoors", garden.Id, episode, person.Id, "")))));
        Assert.All(
            service.Store.Read(reader => JobStates.OfEpisode(reader, garden.Id, episode)).Where(state => garden.Jobs.Any(job => job.Id == state.JobId)),
            state => Assert.Equal(JobProgress.Done, state.Progress));
    }

    /// <summary>The look is taken by itself, at the pace of the settings.</summary>
    [Fact]
    public async Task Serve_MailboxSetUp_LooksByItself()
    {
        await using var mailbox = new MailboxServer();
        await using var service = await VirtualService.StartAsync(
            Begin, new GardenShelf(Array.Empty<GardenBook>()), _ => [], new TestChannel("email", DeliveryResult.Delivered), Duration.FromMinutes(30), practice: true,
            change: plan => plan with { Replies = new(mailbox.Mailbox(), Duration.FromMinutes(2)) });
        Assert.Empty(mailbox.Asked);
        await service.AdvanceAsync(Duration.FromMinutes(2));
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(1));
        while (!mailbox.Asked.Contains("LOGOUT")) await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System, patience.Token);
    }
}
