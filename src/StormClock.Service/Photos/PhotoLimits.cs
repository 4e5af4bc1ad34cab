namespace StormClock.Service.Photos;

/// <summary>What a small box takes and keeps of photos; all of it agreed (C).</summary>
public static class PhotoLimits
{
    /// <summary>Bytes of one upload, 12 MB (C): a phone's JPEG of 50 megapixels mostly has less.</summary>
    public const int UploadBytes = 12 << 20;

    /// <summary>Pixels by the header (C): 50 megapixels as cameras count them, some of which make 8192 x 6144.</summary>
    public const long Pixels = 50 << 20;

    /// <summary>
    /// Memory that a decoder may take by the header, 256 MB (C). Beside the 120 MB of a usual service it stays below the 512 MB that the
    /// unit in <c>deploy/</c> grants, over which the system would end the process.
    /// </summary>
    public const long DecoderBytes = 256 << 20;

    /// <summary>Longer side of what is kept (C): an item and its ties can be made out on a phone.</summary>
    public const int LongerSidePx = 1600;

    /// <summary>Longer side of the thumbnail (C).</summary>
    public const int ThumbnailPx = 320;

    /// <summary>Of 100 (C).</summary>
    public const int JpegQuality = 80;

    /// <summary>Photos of one garden (C): two of each item of a large garden, and rechecks.</summary>
    public const int PhotosOfGarden = 500;

    /// <summary>Bytes of one garden's photos and thumbnails, those set aside too, 256 MB (C).</summary>
    public const long BytesOfGarden = 256 << 20;
}
