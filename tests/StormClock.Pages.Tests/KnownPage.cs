using StormClock.Core.Acknowledgements;
using StormClock.Pages.Tests.Checks;
using StormClock.Pages.Tests.Served;

namespace StormClock.Pages.Tests;

/// <summary>A page and how to get there. Every check of <see cref="AllPagesTests"/> is made on each: a new page is one more line in <see cref="All"/>.</summary>
/// <param name="Address">A path; it may be taken out of a letter.</param>
internal sealed record KnownPage(string Name, Scene Scene, Func<ServedStorm, string> Address)
{
    /// <summary>What it answers with.</summary>
    public int Status { get; init; } = 200;

    /// <summary>Path of the page that it leads to; null where that is the very one.</summary>
    public string? Arrives { get; init; }

    /// <summary>What is done after it has come. The scene is shared: it must do no harm when it is done again, or before another page is looked at.</summary>
    public Func<IPage, Task>? Then { get; init; }

    /// <summary>Its picture is kept in <c>docs/pages/</c> under this name; null for none.</summary>
    public string? Picture { get; init; }

    public static IReadOnlyList<KnownPage> All { get; } =
    [
        new("front page, no garden", Scene.NoGarden, _ => "/"),
        new("front page, nothing due", Scene.Calm, _ => "/"),
        new("front page, main work", Scene.Work, _ => "/") { Picture = "front-main-work" },
        new("front page, main work in Spanish", Scene.WorkInSpanish, _ => "/"),
        new("front page, main work, for strangers", Scene.WorkForPhones, _ => "/"),
        new("front page, last round", Scene.LastRound, _ => "/"),
        new("front page, leave", Scene.Leave, _ => "/"),
        new("front page, garden closed", Scene.Closed, _ => "/") { Picture = "front-garden-closed" },
        new("front page, recheck", Scene.After, _ => "/"),
        new("job", Scene.WorkForPhones, storm => Links.Of(storm, AckPurpose.Job)) { Picture = "job" },
        new("job, answered", Scene.WorkForPhones, storm => Links.Of(storm, AckPurpose.Job, number: 1)) { Then = page => Keyboard.FollowAsync(page, "Done"), Picture = "job-done" },
        new("job, leave", Scene.LeaveForPhones, storm => Links.Of(storm, AckPurpose.Job)),
        new("list of jobs", Scene.WorkForPhones, storm => Links.Of(storm, AckPurpose.All)),
        new("I am in", Scene.ClosedForPhones, storm => Links.Of(storm, AckPurpose.Indoors)) { Picture = "i-am-in" },
        new("recheck list", Scene.AfterForPhones, storm => Links.Of(storm, AckPurpose.Recheck)) { Picture = "recheck" },
        new("notifications", Scene.WorkForPhones, storm => Links.ForPush(storm, "gardener")) { Picture = "notifications" },
        new("notifications, one device", Scene.WorkForPhones, storm => Links.ForPush(storm, "helper")),
        new("signed in, with keys for programs", Scene.Work, _ => "/in") { Picture = "keys" },
        new("sign in", Scene.WorkForPhones, _ => "/in") { Picture = "sign-in" },
        new("now, nothing due", Scene.Calm, _ => "/g/tern-hook/now"),
        new("now, main work", Scene.Work, _ => "/g/tern-hook/now") { Picture = "now" },
        new("now, main work in Spanish", Scene.WorkInSpanish, _ => "/g/tern-hook/now"),
        new("now, leave", Scene.Leave, _ => "/g/tern-hook/now"),
        new("now, garden closed", Scene.Closed, _ => "/g/tern-hook/now"),
        new("jobs", Scene.Work, _ => "/g/tern-hook/jobs") { Picture = "jobs" },
        new("jobs, garden closed", Scene.Closed, _ => "/g/tern-hook/jobs"),
        new("afterwards", Scene.After, _ => "/g/tern-hook/after") { Picture = "afterwards" },
        new("afterwards, a thing", Scene.After, _ => "/g/tern-hook/after/satsuma-halves"),
        new("walk", Scene.Work, _ => "/g/tern-hook/walk") { Picture = "walk" },
        new("walk, an area", Scene.Work, _ => "/g/tern-hook/walk/porch") { Picture = "walk-area" },
        new("walk, a thing", Scene.Work, _ => "/g/tern-hook/walk/porch/satsuma-halves") { Picture = "walk-thing" },
        new("plot map", Scene.Work, _ => "/g/tern-hook/plot-map") { Picture = "plot-map" },
        new("plot map, placing a thing", Scene.Work, _ => "/g/tern-hook/plot-map?place=item/satsuma-halves"),
        new("plot map, placing an area", Scene.Work, _ => "/g/tern-hook/plot-map?place=area/porch"),
        new("plot map, nothing due", Scene.Calm, _ => "/g/tern-hook/plot-map?site=strip"),
        new("order of worry", Scene.Work, _ => "/g/tern-hook/worry") { Picture = "worry" },
        new("storms", Scene.After, _ => "/g/tern-hook/storms") { Picture = "storms" },
        new("keeper", Scene.Work, _ => "/keeper") { Picture = "keeper" },
        new("people of a garden", Scene.Work, _ => "/keeper/people/tern-hook") { Picture = "people" },
        new("a person", Scene.Work, _ => "/keeper/people/tern-hook/helper"),
        new("first run", Scene.NoGarden, _ => "/start") { Picture = "first-run" },
        new("mail", Scene.Work, _ => "/start/mail"),
        new("practice", Scene.NoGarden, _ => "/start/practice"),
        new("link that is not ours", Scene.Calm, _ => "/j/nothing") { Status = 404 },
    ];

    public static KnownPage Named(string name) => All.Single(page => page.Name == name);

    /// <summary>The page's address, opened, and what is to be done there done.</summary>
    public async Task OpenAsync(Visit visit, Scenes scenes)
    {
        var storm = await scenes.PlayAsync(Scene);
        await visit.GoAsync(storm.At(Address(storm)), Status, Arrives);
        if (Then is not null) await Then(visit.Page);
    }
}
