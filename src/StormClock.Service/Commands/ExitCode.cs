using StormClock.Service.Store;

namespace StormClock.Service.Commands;

/// <summary>What a command says to the shell (product.md 4).</summary>
internal static class ExitCode
{
    public const int Good = 0;
    public const int BadInput = 1;
    public const int Usage = 2;
    public const int OutsideTrouble = 3;

    /// <summary>Disk, network, or a data folder that cannot be used: told in one line, no fault of the program.</summary>
    public static bool IsOutsideTrouble(Exception trouble) =>
        trouble is IOException or UnauthorizedAccessException or StoreInUseException or StoreUnavailableException or StoreTooNewException;
}
