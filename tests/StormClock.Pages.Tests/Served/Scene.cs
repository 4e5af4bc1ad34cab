using StormClock.Core.Stages;
using StormClock.Service.Delivery.Push;
using StormClock.Service.Store;

namespace StormClock.Pages.Tests.Served;

/// <summary>A moment of the practice storm at which pages are looked at.</summary>
/// <param name="Stage">What Tern Hook must stand at then; null where there is no garden, or where leaving outranks the stage.</param>
internal sealed record Scene(string Name, Stage? Stage, Func<Task<ServedStorm>> PlayAsync)
{
    private static readonly Instant Before = Instant.FromUtc(2027, 9, 18, 12, 0);
    private static readonly Instant Monday = Instant.FromUtc(2027, 9, 20, 12, 0);
    private static readonly Instant LastLight = Instant.FromUtc(2027, 9, 22, 20, 30);
    private static readonly Instant InTheStorm = Instant.FromUtc(2027, 9, 23, 4, 45);
    private static readonly Instant Afterwards = Instant.FromUtc(2027, 9, 24, 17, 45);

    private static readonly Installing AtTheBox = new() { Practice = false };
    private static readonly Installing ForPhones = new() { PhonesReachPages = true };
    private static readonly Installing InSpanish = AtTheBox with { Edit = yaml => yaml.Replace("units: us,", "units: us, language: es,", StringComparison.Ordinal) };

    public static Scene NoGarden { get; } = new("no garden", null, () => ServedStorm.StartAsync(Before, AtTheBox with { Gardens = [] }));

    public static Scene Calm { get; } = new("calm", Core.Stages.Stage.NothingDue, () => ServedStorm.StartAsync(Before, AtTheBox));

    public static Scene Work { get; } = new("main work", Core.Stages.Stage.MainWork, () => ServedStorm.StartAsync(Monday, AtTheBox));

    public static Scene WorkInSpanish { get; } = new("main work in Spanish", Core.Stages.Stage.MainWork, () => ServedStorm.StartAsync(Monday, InSpanish));

    /// <summary>The helper has a phone that is notified, the gardener has none.</summary>
    public static Scene WorkForPhones { get; } = new("main work, with links", Core.Stages.Stage.MainWork, WorkForPhonesAsync);

    public static Scene LastRound { get; } = new("last round", Core.Stages.Stage.LastRound, () => ServedStorm.StartAsync(LastLight, AtTheBox));

    public static Scene LastRoundForPhones { get; } = new("last round, with links", Core.Stages.Stage.LastRound, () => ServedStorm.StartAsync(LastLight, ForPhones));

    public static Scene Leave { get; } = new("leave", null, () => LeaveAsync(AtTheBox));

    public static Scene LeaveForPhones { get; } = new("leave, with links", null, () => LeaveAsync(ForPhones));

    public static Scene Closed { get; } = new("closed", Core.Stages.Stage.GardenClosed, () => ServedStorm.StartAsync(InTheStorm, AtTheBox));

    public static Scene ClosedForPhones { get; } = new("closed, with links", Core.Stages.Stage.GardenClosed, () => ServedStorm.StartAsync(InTheStorm, ForPhones));

    public static Scene After { get; } = new("recheck", Core.Stages.Stage.Recheck, () => AfterAsync(AtTheBox));

    public static Scene AfterForPhones { get; } = new("recheck, with links", Core.Stages.Stage.Recheck, () => AfterAsync(ForPhones));

    private static async Task<ServedStorm> WorkForPhonesAsync()
    {
        var storm = await ServedStorm.StartAsync(Monday, ForPhones);
        await storm.Store.WriteAsync(transaction => Subscriptions.Put(
            transaction, new("d1", "tern-hook", "helper", "Amos' phone", "https://push.example.net/send/abc", new("", ""), Monday)));
        return storm;
    }

    private static async Task<ServedStorm> LeaveAsync(Installing how)
    {
        var storm = await ServedStorm.StartAsync(LastLight, how);
        storm.NoteLeaveBy("tern-hook", LastLight + Duration.FromHours(1));
        await storm.AdvanceToAsync(LastLight + Duration.FromHours(2));
        return storm;
    }

    private static async Task<ServedStorm> AfterAsync(Installing how)
    {
        var storm = await ServedStorm.StartAsync(InTheStorm, how);
        await storm.AdvanceToAsync(Afterwards);
        return storm;
    }
}
