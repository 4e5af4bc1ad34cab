namespace StormClock.Core.Acknowledgements;

/// <summary>What a person may press on a link's page.</summary>
public enum JobAnswer { Done, Cannot, Later }
