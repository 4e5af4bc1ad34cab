namespace StormClock.Service.Photos;

/// <summary>What a kept photo shows, and who sent it when.</summary>
/// <param name="Subject"><c>item/fig-pots</c>, <c>sketch/home</c> with the id of the site, or <c>recheck/EPISODE/ITEM</c>.</param>
/// <param name="FileName">Its name on the <see cref="PhotoShelf"/>.</param>
/// <param name="By">Id of the person.</param>
public sealed record PhotoNote(string Id, string GardenId, string Subject, string FileName, Instant At, string By, int WidthPx, int HeightPx);
