using StormClock.Service.Wording;

namespace StormClock.Service.Messages;

/// <summary>
/// What spoke, in the reader's language. The records of Core name themselves in the English of the log
/// (<c>NINETY advisory 1</c>, <c>Hurricane Warning</c>); here the forms of those names are known again. A name that is none of them is somebody's own and stays.
/// </summary>
internal static class SourceWords
{
    public static string Of(string name, Speech speech)
    {
        return name.Length == 0 ? speech.Say("source.newest") : name;
    }
}
