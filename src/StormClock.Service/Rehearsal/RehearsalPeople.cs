using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using StormClock.Core.Acknowledgements;
using StormClock.Service.Desk;
using StormClock.Service.Outbox;
using StormClock.Service.Store;

namespace StormClock.Service.Rehearsal;

/// <summary>
/// The people of a rehearsal: they take the links out of their mails and press them on the real pages, by the real form,
/// when their work would be done.
/// </summary>
internal sealed partial class RehearsalPeople : IDisposable
{
    /// <summary>Stands for the address that phones would reach; the rehearsal's own port is put in its place.</summary>
    public static readonly Uri PagesAddress = new("http://stormclock.invalid");

    private static readonly Duration Lateness = Duration.FromHours(4);
    private static readonly Duration GoingIn = Duration.FromMinutes(15);

    private readonly Acks acks;
    private readonly IServiceProvider services;
    private readonly StormStore store;
    private readonly string gardenId;
    private readonly Uri pages;
    private readonly HttpClient browser = new(new HttpClientHandler { CookieContainer = new CookieContainer(), AllowAutoRedirect = false });
    private readonly Dictionary<string, (Instant At, string Token)> presses = [];

    private RehearsalPeople(RehearsalPlan plan, IHost host, StormStore store)
    {
        acks = plan.Acks;
        services = host.Services;
        this.store = store;
        gardenId = plan.Garden.Id;
        pages = new(host.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());
    }

    /// <summary>When somebody next presses a link; null when nobody will.</summary>
    public Instant? NextPress => presses.Count == 0 ? null : presses.Values.Min(press => press.At);

    public static RehearsalPeople For(RehearsalPlan plan, WebApplication host, StormStore store)
    {
        var people = new RehearsalPeople(plan, host, store);
        if (plan.Acks == Acks.None) return people;
        host.Services.GetRequiredService<Journal>().Written += written =>
        {
            if (written is { Kind: "sent", Key: { } key }) people.Receive(key);
        };
        return people;
    }

    /// <summary>Takes up the mails that an earlier rehearsal, broken off here, had sent; needs a decision to have been made.</summary>
    public void Remember()
    {
        if (acks == Acks.None) return;
        foreach (var entry in store.Read(reader => OutboxTable.OfGarden(reader, gardenId)).Where(entry => entry.State == OutboxState.Sent)) Receive(entry.Key);
    }

    /// <summary>Presses everything that is due by now, one after the other.</summary>
    public async Task PressAsync(Instant now)
    {
        foreach (var (job, press) in presses.Where(press => press.Value.At <= now).OrderBy(press => press.Value.At).ThenBy(press => press.Key, StringComparer.Ordinal).ToList())
        {
            presses.Remove(job);
            await PressAsync(press.Token);
        }
    }

    public void Dispose() => browser.Dispose();

    /// <summary>Plans to press each job's link when the plan of this message would have it done.</summary>
    private void Receive(string key)
    {
        if (store.Read(reader => OutboxTable.FindByKey(reader, key)) is not { } entry) return;
        var plan = services.GetRequiredService<GardenDesk>().Latest.GetValueOrDefault(gardenId)?.Plan;
        var keys = services.GetRequiredService<AckKeyRing>().Keys;
        foreach (Match link in Link().Matches(entry.Message.Text))
        {
            var text = link.Groups[1].Value;
            if (AckToken.Read(text, keys, entry.Moment).Token is not { } token) continue;
            if (token.Purpose == AckPurpose.Indoors) GoIn(token, entry, text);
            if (token.Purpose != AckPurpose.Job) continue;
            if (plan?.Jobs.FirstOrDefault(job => job.Job.Id == token.Subject) is not { } planned) continue;
            presses[token.Subject] = (planned.End + (acks == Acks.Late ? Lateness : Duration.Zero), text);
        }
    }

    /// <summary>Plans to say "I am in", some time after the first message that asked for it.</summary>
    private void GoIn(AckToken token, OutboxEntry entry, string text)
    {
        var said = store.Read(reader => Indoors.OfEpisode(reader, token.GardenId, token.EpisodeId));
        if (!said.ContainsKey(token.PersonId)) presses.TryAdd($"in {token.PersonId}", (entry.Settled!.Value + (acks == Acks.Late ? Lateness : GoingIn), text));
    }

    private async Task PressAsync(string token)
    {
        var address = new Uri(pages, $"/j/{token}");
        var page = await browser.GetStringAsync(address);
        var hidden = Hidden().Match(page);
        if (!hidden.Success) return;
        using var form = new FormUrlEncodedContent(new Dictionary<string, string>
        {
            ["answer"] = "done",
            [WebUtility.HtmlDecode(hidden.Groups[1].Value)] = WebUtility.HtmlDecode(hidden.Groups[2].Value),
        });
        using var answer = await browser.PostAsync(address, form);
    }

    [GeneratedRegex(@"/j/([A-Za-z0-9_-]+)")]
    private static partial Regex Link();

    [GeneratedRegex("""<input[^>]*type="hidden"[^>]*name="([^"]*)"[^>]*value="([^"]*)"[^>]*>""")]
    private static partial Regex Hidden();
}
