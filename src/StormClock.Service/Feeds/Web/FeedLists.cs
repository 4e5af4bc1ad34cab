using StormClock.Core;
using StormClock.Core.Formats.Feeds;

namespace StormClock.Service.Feeds.Web;

/// <summary>The reader of lists that the service uses.</summary>
internal static class FeedLists
{
    public static ReadResult<FeedIndex> Read(ReadOnlyMemory<byte> bytes) =>
        new ReadFault("list", $"lists of messages cannot be read by this version ({bytes.Length} bytes); name the address of one message with kind: url");
}
