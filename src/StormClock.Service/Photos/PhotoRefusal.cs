using StormClock.Core;
using StormClock.Service.Wording;

namespace StormClock.Service.Photos;

/// <summary>Why a photo is not taken; the texts stand under <c>photo.*</c>.</summary>
internal enum PhotoRefusal { Empty, TooLarge, TooManyPixels, Heic, OtherFormat, Moving, Broken, NotHere, TooMany, NoRoom, Several }

internal static class PhotoRefusals
{
    /// <summary>As the person who sent it is told, with what to do.</summary>
    public static ReadFault For(this Speech speech, PhotoRefusal refusal) =>
        new("photo", speech.Word("photo", refusal, ("limit", LimitOf(refusal)), ("count", PhotoLimits.PhotosOfGarden)));

    /// <summary>In megabytes.</summary>
    private static long LimitOf(PhotoRefusal refusal) => (refusal == PhotoRefusal.NoRoom ? PhotoLimits.BytesOfGarden : PhotoLimits.UploadBytes) >> 20;
}
