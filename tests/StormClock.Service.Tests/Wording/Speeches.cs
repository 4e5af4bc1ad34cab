using StormClock.Core.Garden;
using StormClock.Service.Wording;

namespace StormClock.Service.Tests;

/// <summary>How the readers of tests are spoken to.</summary>
internal static class Speeches
{
    public static Speech Us { get; } = Speech.English(UnitSystem.UsCustomary);

    public static Speech Spanish { get; } = new(Language.Spanish, ClockForm.Hours12, UnitSystem.UsCustomary);
}
