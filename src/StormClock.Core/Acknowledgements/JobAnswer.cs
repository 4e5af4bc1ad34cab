namespace StormClock.Core.Acknowledgements;

/// <summary>What a person may answer on a link's page.</summary>
public enum JobAnswer
{
    Done,

    /// <summary>Without a reason; the next three are the same with one.</summary>
    Cannot,
    NoTime,
    NoMaterial,
    NeedsPerson,
    Later,

    /// <summary>What this person said last is taken back, and what had been said before stands again.</summary>
    TakeBack,
}
