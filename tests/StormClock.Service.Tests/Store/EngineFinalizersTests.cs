using StormClock.Service.Store;

namespace StormClock.Service.Tests.Store;

public class EngineFinalizersTests
{
    private sealed class Thrown(string? stack) : Exception
    {
        public override string? StackTrace => stack;
    }

    /// <summary>Stacks as seen: the first ended a run of these tests, the others must end a process as ever.</summary>
    [Theory]
    [InlineData("   at LiteDB.Engine.TransactionService.Dispose(Boolean dispose)\n   at LiteDB.Engine.TransactionService.Finalize()\n   at System.GC.RunFinalizers()", true)]
    [InlineData("   at LiteDB.Engine.TransactionService.Dispose(Boolean dispose)\n   at StormClock.Service.Store.StormStore.Close()", false)]
    [InlineData("   at LiteDB.Engine.DiskService.Finalize()", false)]
    [InlineData(null, false)]
    public void Harmless_OnlyADroppedTransactionBeingCollected(string? stack, bool harmless) =>
        Assert.Equal(harmless, EngineFinalizers.IsHarmless(new Thrown(stack)));
}
