namespace StormClock.Service.Web;

/// <summary>Settings of the pages.</summary>
/// <param name="DataFolder">Keys of the forms are kept below it, so that a page opened before a restart still works after it.</param>
/// <param name="PagesAddress">Where phones reach the pages; null when they cannot: then messages carry no links, and the front page, seen only near the box, shows messages and marks work.</param>
/// <param name="LinkRequestsPerMinute">From one address; guessing a token is hopeless anyway, this keeps a small box answering.</param>
/// <param name="MaySendTests">The front page offers test messages: where it is served to this box alone.</param>
public sealed record PagesSettings(string DataFolder, Uri? PagesAddress, int LinkRequestsPerMinute = 60, bool MaySendTests = false)
{
    /// <summary>The pages are served on an address that only this box itself can open.</summary>
    public bool ListensHereOnly { get; init; } = true;

    /// <summary>Nobody but who sits at this box can open the pages: there is no address for phones either, behind which a proxy could bring strangers.</summary>
    public bool IsBoxOnly => PagesAddress is null && ListensHereOnly;
}
