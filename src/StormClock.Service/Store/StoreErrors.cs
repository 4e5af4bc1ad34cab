namespace StormClock.Service.Store;

/// <summary>Another process holds the data folder; two would send everything twice.</summary>
public sealed class StoreInUseException(string folder, Exception inner)
    : Exception($"another StormClock uses this data folder: {folder}. Stop it, or name another folder.", inner);

/// <summary>
/// The disk would not take or give the data: full, broken or gone. A write that ends so is not acknowledged, but may
/// still be found later, so every write must be harmless when repeated. The store opens the files anew on its next use.
/// </summary>
public sealed class StoreUnavailableException(string message, Exception inner) : Exception(message, inner);

/// <summary>The data folder was written by a newer StormClock.</summary>
public sealed class StoreTooNewException(int found, int known)
    : Exception($"the data folder has schema {found}, this StormClock knows up to {known}: install the newer version, or restore a backup made before the upgrade.");
