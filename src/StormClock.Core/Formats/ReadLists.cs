using StormClock.Core.Advisories;

namespace StormClock.Core.Formats;

/// <summary>One message as a list of one.</summary>
internal static class ReadLists
{
    public static ReadResult<IReadOnlyList<Advisory>> AsList<T>(this ReadResult<T> result)
        where T : Advisory =>
        result.Value is { } value ? ReadResult.Good<IReadOnlyList<Advisory>>([value]) : ReadResult.Bad<IReadOnlyList<Advisory>>(result.Faults);
}
