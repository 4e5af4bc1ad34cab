namespace StormClock.Service.Store;

/// <summary>The first refusal of the disk by either file of one opened database; after it neither file is written any more.</summary>
internal sealed class DiskTrouble
{
    private Exception? first;

    /// <summary>Throws the refusal, where there was one.</summary>
    public void ThrowIfAny()
    {
        if (first is not null) throw new IOException(first.Message, first);
    }

    /// <summary>Does it unless there is trouble already; keeps trouble instead of throwing it.</summary>
    public void Catch(Action write)
    {
        if (first is not null) return;
        try
        {
            write();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            first = e;
        }
    }
}
