namespace StormClock.Service.Photos;

/// <summary>A photo drawn anew from its pixels: upright, sRGB, and without anything that the camera wrote beside them.</summary>
/// <param name="Jpeg">A JPEG file of at most <see cref="PhotoLimits.LongerSidePx"/>.</param>
/// <param name="Thumbnail">A JPEG file of at most <see cref="PhotoLimits.ThumbnailPx"/>.</param>
public sealed record Photo(ReadOnlyMemory<byte> Jpeg, int WidthPx, int HeightPx, ReadOnlyMemory<byte> Thumbnail);
