using System.Runtime.ExceptionServices;

namespace StormClock.Service.Store;

/// <summary>
/// A transaction that the engine dropped when its disk failed may throw once more when it is collected, and that would end the process
/// (LiteDB 5.0.21, litedb-org/LiteDB#2828). By then its files are closed and nothing of it is acknowledged, so such an exception, and
/// no other, is let go.
/// </summary>
internal static class EngineFinalizers
{
    private const string Finalizer = "LiteDB.Engine.TransactionService.Finalize()";

    private static int guarded;

    public static void Guard()
    {
        if (Interlocked.Exchange(ref guarded, 1) == 0) ExceptionHandling.SetUnhandledExceptionHandler(IsHarmless);
    }

    internal static bool IsHarmless(Exception e) => e.StackTrace?.Contains(Finalizer, StringComparison.Ordinal) == true;
}
