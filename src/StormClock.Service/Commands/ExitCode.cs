namespace StormClock.Service.Commands;

/// <summary>What a command says to the shell (product.md 4).</summary>
internal static class ExitCode
{
    public const int Good = 0;
    public const int BadInput = 1;
    public const int Usage = 2;
    public const int OutsideTrouble = 3;
}
