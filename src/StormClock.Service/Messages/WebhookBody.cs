using System.Text.Encodings.Web;
using System.Text.Json;
using StormClock.Core.Reminders;
using StormClock.Service.Wording;

namespace StormClock.Service.Messages;

/// <summary>
/// The JSON that a webhook gets; keys may be added, none is ever renamed. Title, line and text are in the person's language,
/// the stage is in English for programs.
/// </summary>
public static class WebhookBody
{
    private static readonly JsonSerializerOptions Plainly = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Of(Reminder reminder, MessageText letter, ShortMessage brief, string entryId) => JsonSerializer.Serialize(
        new
        {
            id = entryId,
            garden = reminder.Key.GardenId,
            person = reminder.Key.PersonId,
            name = reminder.To.Name,
            reason = reminder.Key.Reason.ToString(),
            stage = Words.Of(reminder.Brief.Stage, Speech.English(reminder.Brief.Units)),
            urgent = reminder.Urgent,
            usefulUntil = $"{reminder.UsefulUntil}",
            title = brief.Title,
            line = brief.Line,
            link = brief.Link,
            text = letter.Text,
            language = letter.Language,
        },
        Plainly);
}
