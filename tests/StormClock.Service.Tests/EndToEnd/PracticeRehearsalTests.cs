using System.Text.Json;
using System.Text.RegularExpressions;
using StormClock.Core.Acknowledgements;
using StormClock.Core.Garden;
using StormClock.Service.Outbox;
using StormClock.Service.Tests.Calendars;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>The whole way, from advisories to letters in a mail server and back by pressed links.</summary>
public partial class PracticeRehearsalTests(PracticeRun run) : IClassFixture<PracticeRun>
{
    private static readonly string[] Kinds = ["advisory", "stage", "plan", "reminder", "sent", "done", "missed", "standdown", "recheck"];
    private static readonly string[] Shape = ["at", "kind", "garden", "stage", "reason", "to", "subject", "jobs", "key"];

    private IEnumerable<OutboxEntry> Sent => run.Outbox.Where(entry => entry.State == OutboxState.Sent);

    [Fact]
    public void Rehearsal_PracticeStorm_EndsWell()
    {
        Assert.Equal((0, ""), (run.Result.Exit, run.Result.Errors));
        Assert.DoesNotContain(run.Outbox, entry => entry.State is OutboxState.Waiting or OutboxState.Claimed or OutboxState.Refused);
        Assert.True(Sent.Count() > 10);
    }

    [Fact]
    public void Letters_EveryEntrySent_ArrivesExactlyOnceAsWritten()
    {
        Assert.Equal(Sent.Select(entry => entry.Message.MessageId).Order(), run.Server.Letters.Select(letter => letter.MessageId).Order());
        foreach (var entry in Sent)
        {
            var letter = run.Server.Letters.Single(letter => letter.MessageId == entry.Message.MessageId);
            Assert.Equal(entry.Message.Subject, letter.Subject);
            Assert.Equal(entry.Message.ToAddress, letter.To.Mailboxes.Single().Address);
            Assert.Equal(Lines(entry.Message.Text), Lines(letter.TextBody!));
            Assert.Equal(Lines(entry.Message.Html), Lines(letter.HtmlBody!));
            Assert.Equal(entry.Moment.ToUnixTimeSeconds(), letter.Date.ToUnixTimeSeconds());
        }
    }

    [Fact]
    public void Letters_OfOneEpisodeToOnePerson_HangTogether()
    {
        var threads = run.Server.Letters.Select(letter => (To: letter.To.Mailboxes.Single().Address, Root: letter.InReplyTo)).Distinct().ToList();
        Assert.Equal(2, threads.Count);
        Assert.Equal(threads.Select(thread => thread.To).Distinct(), threads.Select(thread => thread.To));
        Assert.Equal(2, threads.Select(thread => thread.Root).Distinct().Count());
        Assert.All(run.Server.Letters, letter => Assert.Equal([letter.InReplyTo!], letter.References.ToList()));
    }

    /// <summary>As it arrives: whoever has jobs gets them as entries, the gardener the whole plan as a sheet, and nobody anything else.</summary>
    [Fact]
    public void Letters_WithJobsBeforeTheStorm_CarryCalendarAndSheet()
    {
        foreach (var entry in Sent)
        {
            var asks = entry.JobIds.Count > 0 && entry.Reason is "StageChanged" or "WorkDay" or "OrderChanged";
            var parts = Letter(entry).Attachments.Cast<MimeKit.MimePart>().ToList();
            Assert.Equal(asks && entry.PersonId == "gardener" ? 1 : 0, parts.Count(part => part.ContentType.MimeType == "application/pdf"));
            if (asks) Assert.Single(parts, part => part.ContentType.MimeType == "text/calendar");
            Assert.All(parts, part => Assert.Contains(part.FileName, (string[])["garden-work.ics", "storm-plan.pdf"]));
            foreach (var part in parts.Where(part => part.FileName == "storm-plan.pdf")) Assert.InRange(Bytes(part).Length, 10_000, 200_000);
        }
    }

    /// <summary>A calendar program that takes in every letter in order: sequences never fall, a change always brings a higher one, and nothing stands once the garden is closed.</summary>
    [Fact]
    public void Letters_TakenIntoACalendar_KeepItInLineToTheEnd()
    {
        var taken = new Dictionary<string, CheckedEvent>();
        var (raised, cancelled) = (0, 0);
        foreach (var entry in Sent.OrderBy(entry => entry.Settled))
        {
            foreach (var told in Letter(entry).Attachments.OfType<MimeKit.MimePart>().Where(part => part.FileName == "garden-work.ics").SelectMany(part => Read(part).Events))
            {
                if (taken.TryGetValue(told.Uid, out var before))
                {
                    Assert.True(told.Sequence >= before.Sequence);
                    if (told.Sequence == before.Sequence) Assert.Equal(before, told);
                    else raised++;
                }

                if (told.Status == "CANCELLED") cancelled++;
                taken[told.Uid] = told;
            }

            if (entry.Message.Subject.StartsWith("Stop now", StringComparison.Ordinal))
            {
                var ahead = taken.Values.Where(told => told.End > entry.Settled && Uids(entry.PersonId).Contains(told.Uid));
                Assert.All(ahead, told => Assert.Equal("CANCELLED", told.Status));
            }
        }

        Assert.True(raised > 20 && cancelled > 10, $"{raised} raised, {cancelled} cancelled");
    }

    /// <summary>Jobs before the storm each have a link of their own, which is good for exactly that person and job, in both forms of the letter.</summary>
    [Fact]
    public void Links_InEveryLetterThatAsksForWork_AreOneForEachJob()
    {
        var asking = Sent.Where(entry => entry.JobIds.Count > 0).ToList();
        Assert.NotEmpty(asking);
        Assert.All(asking, entry =>
        {
            var tokens = Tokens(entry, entry.Message.Text);
            Assert.Equal(tokens, Tokens(entry, entry.Message.Html));
            Assert.All(tokens, token => Assert.Equal(("tern-hook", entry.PersonId), (token.GardenId, token.PersonId)));
            var jobs = tokens.Where(token => token.Purpose == AckPurpose.Job).Select(token => token.Subject).ToHashSet();
            Assert.True(jobs.IsSubsetOf(entry.JobIds));
            if (entry.JobIds.Count > 1) Assert.Contains(tokens, token => token.Purpose is AckPurpose.All or AckPurpose.Recheck && token.Subject == AckList.Hash(entry.JobIds));
            if (entry.Reason != "Recheck") Assert.Equal(entry.JobIds.Order(), jobs.Order());
        });
    }

    [Fact]
    public void Links_Pressed_TakeTheirJobsOutOfEveryLaterPlanAndLetter()
    {
        var done = new HashSet<string>();
        var planned = new List<int>();
        foreach (var entry in run.Events)
        {
            var jobs = Jobs(entry);
            if (Kind(entry) == "done") done.UnionWith(jobs);
            else if (Kind(entry) is "plan" or "reminder" && Text(entry, "stage") != "recheck") Assert.DoesNotContain(jobs, done.Contains);
            if (Kind(entry) == "plan") planned.Add(jobs.Count);
        }

        Assert.True(done.Count > 20, $"only {done.Count} jobs were pressed");
        Assert.Equal(done.Order(), run.Jobs.Where(job => job.Progress == JobProgress.Done).Select(job => job.JobId).Order());
        Assert.True(planned[^1] < planned[0] / 2, "the plan hardly shrank");
    }

    [Fact]
    public void Json_EveryEvent_HasTheDocumentedShape() => Assert.All(run.Events, entry =>
    {
        Assert.True(Shape.All(key => entry.TryGetProperty(key, out _)), entry.GetRawText());
        Assert.Contains(Kind(entry), Kinds);
        Assert.True(NodaTime.Text.InstantPattern.General.Parse(Text(entry, "at")!).Success);
        Assert.Equal(JsonValueKind.Array, entry.GetProperty("jobs").ValueKind);
        if (Kind(entry) is "reminder" or "sent") Assert.All(["garden", "to", "subject", "key", "reason"], key => Assert.NotNull(Text(entry, key)));
        if (Kind(entry) is "stage" or "recheck") Assert.All(["garden", "stage", "reason"], key => Assert.NotNull(Text(entry, key)));
    });

    [Fact]
    public void Json_Times_NeverGoBack()
    {
        var times = run.Events.Select(At).ToList();
        Assert.Equal(times.Order(), times);
    }

    [Fact]
    public void Json_Sent_NamesEachKeyOnceAndEveryOneThatWasWanted()
    {
        var sent = Keys("sent");
        Assert.Equal(sent.Distinct(), sent);
        Assert.Equal(Sent.Select(entry => entry.Key).Order(), sent.Order());
        Assert.Equal(Keys("reminder").Order(), sent.Concat(Keys("missed")).Order());
    }

    [Fact]
    public void Closed_UntilTheRecheck_NobodyIsAskedToWorkOutside()
    {
        var closed = run.Events.Single(entry => Kind(entry) == "stage" && Text(entry, "stage") == "garden_closed");
        var recheck = run.Events.Single(entry => Kind(entry) == "recheck");
        var between = run.Events.Where(entry => At(entry) >= At(closed) && At(entry) < At(recheck)).ToList();

        Assert.True(At(recheck) - At(closed) > Duration.FromHours(12));
        Assert.Equal(2, between.Count(entry => Kind(entry) == "sent"));
        Assert.All(between.Where(entry => Kind(entry) is "sent" or "reminder" or "plan"), entry => Assert.Empty(Jobs(entry)));
        Assert.All(
            run.Outbox.Where(entry => entry.State == OutboxState.Sent && entry.Settled >= At(closed) && entry.Settled < At(recheck)),
            entry => Assert.All(Tokens(entry, entry.Message.Text), token => Assert.Equal(AckPurpose.Indoors, token.Purpose)));
    }

    [Fact]
    public void Sent_Never_AtOrAfterTheEndOfItsUse() => Assert.All(Sent, entry => Assert.True(entry.Settled < entry.UsefulUntil));

    [Fact]
    public void Sent_NoDay_BringsAPersonMoreThanSixLetters()
    {
        var zone = DateTimeZoneProviders.Tzdb["America/New_York"];
        var perDay = Sent.Where(entry => !entry.Urgent).GroupBy(entry => (entry.PersonId, entry.Settled!.Value.InZone(zone).Date));
        Assert.All(perDay, day => Assert.InRange(day.Count(), 1, 6));
    }

    /// <summary>Whoever goes by "if none comes, the box may be down" must not be misled: the next letter comes by the hour that the last one named.</summary>
    [Fact]
    public void Sent_NextLetter_ComesByTheHourNamed()
    {
        var zone = DateTimeZoneProviders.Tzdb["America/New_York"];
        var held = 0;
        foreach (var letters in Sent.GroupBy(entry => entry.PersonId).Select(own => own.OrderBy(entry => entry.Settled).ToList()))
        {
            foreach (var (letter, next) in letters.Zip(letters.Skip(1)))
            {
                if (next.Reason == "Recheck") continue;
                var named = Named().Match(letter.Message.Text);
                Assert.True(named.Success, letter.Message.Subject);
                var at = letter.Settled!.Value.InZone(zone).LocalDateTime;
                var day = at.Date.With(DateAdjusters.NextOrSame(Weekdays[named.Groups[1].Value]));
                var by = day + new LocalTime(int.Parse(named.Groups[2].Value, System.Globalization.CultureInfo.InvariantCulture), int.Parse(named.Groups[3].Value, System.Globalization.CultureInfo.InvariantCulture));
                if (by < at) by = by.PlusWeeks(1);
                Assert.True(next.Settled <= zone.AtStrictly(by).ToInstant(), $"{letter.Message.Subject} of {at} named {by}, and {next.Message.Subject} came at {next.Settled}");
                held++;
            }
        }

        Assert.True(held > 10);
    }

    private static readonly Dictionary<string, IsoDayOfWeek> Weekdays = Enum.GetValues<IsoDayOfWeek>().Where(day => day != IsoDayOfWeek.None).ToDictionary(day => $"{day}"[..3]);

    [GeneratedRegex(@"Next message by (?:about )?(\w{3}) (\d\d):(\d\d)")]
    private static partial Regex Named();

    private MimeKit.MimeMessage Letter(OutboxEntry entry) => run.Server.Letters.Single(letter => letter.MessageId == entry.Message.MessageId);

    private HashSet<string> Uids(string person) =>
        [.. Sent.Where(entry => entry.PersonId == person).SelectMany(entry => Letter(entry).Attachments.OfType<MimeKit.MimePart>())
            .Where(part => part.FileName == "garden-work.ics").SelectMany(part => Read(part).Events).Select(told => told.Uid)];

    private static CheckedCalendar Read(MimeKit.MimePart part)
    {
        Assert.Equal(("utf-8", "PUBLISH"), (part.ContentType.Charset, part.ContentType.Parameters["method"]));
        var read = CheckedCalendar.Read(Bytes(part));
        Assert.Equal("PUBLISH", read.Method);
        return read;
    }

    private static byte[] Bytes(MimeKit.MimePart part)
    {
        using var bytes = new MemoryStream();
        part.Content!.DecodeTo(bytes, TestContext.Current.CancellationToken);
        return bytes.ToArray();
    }

    private List<string?> Keys(string kind) => [.. run.Events.Where(entry => Kind(entry) == kind).Select(entry => Text(entry, "key"))];

    private List<AckToken> Tokens(OutboxEntry entry, string text) =>
    [
        .. Link().Matches(text).Select(link => AckToken.Read(link.Groups[1].Value, run.Keys.Keys, entry.Moment).Token!)
            .Distinct().OrderBy(token => token.Purpose).ThenBy(token => token.Subject, StringComparer.Ordinal),
    ];

    private static string[] Lines(string text) => text.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n');

    private static string? Kind(JsonElement entry) => Text(entry, "kind");

    private static string? Text(JsonElement entry, string key) => entry.GetProperty(key).GetString();

    private static Instant At(JsonElement entry) => NodaTime.Text.InstantPattern.General.Parse(Text(entry, "at")!).Value;

    private static List<string> Jobs(JsonElement entry) => [.. entry.GetProperty("jobs").EnumerateArray().Select(job => job.GetString()!)];

    [GeneratedRegex(@"http://stormclock\.invalid/j/([A-Za-z0-9_-]+)")]
    private static partial Regex Link();
}
