using MailKit;

namespace StormClock.Service.Delivery.Email;

/// <summary>Knows whether any of the letter's content has gone out: from then on a lost connection leaves its fate open.</summary>
internal sealed class ContentWatch : ITransferProgress
{
    public bool Began { get; private set; }

    public void Report(long bytesTransferred, long totalSize) => Began = true;

    public void Report(long bytesTransferred) => Began = true;
}
