using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Core.Plan;
using StormClock.Core.Stages;
using StormClock.Service.Messages;
using StormClock.Service.Pictures;
using StormClock.Service.Sheets;
using StormClock.Service.Wording;

namespace StormClock.Service.Commands;

/// <summary>The files that <c>plan</c> writes when asked, in the garden's language; null where not.</summary>
internal sealed record PlanFiles(string? Sheet, string? Picture)
{
    private const double PictureWidth = 900;

    /// <summary>Writes them; the exit code.</summary>
    public int Write(GardenBook book, Decision decision, Instant now)
    {
        try
        {
            if (Picture is { } picture) File.WriteAllText(picture, new PlanPicture(SubjectOf(book, decision, now)).Svg(PictureWidth));
            if (Sheet is { } sheet) File.WriteAllBytes(sheet, PlanSheet.Of(book, decision, now, Speech.Of(book)));
            return ExitCode.Good;
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine($"cannot be written: {trouble.Message}");
            return ExitCode.OutsideTrouble;
        }
    }

    /// <summary>An order to leave now, or a closed garden, leaves no work to draw.</summary>
    private static PictureSubject SubjectOf(GardenBook book, Decision decision, Instant now)
    {
        var nothing = new GardenPlan(now, new Dictionary<WorkClass, WorkStop>(), [], [], [], []);
        var subject = new PictureSubject(book, decision.Plan ?? nothing, now, decision.LeaveBy, Speech.Of(book));
        return Halt.WorkIsOver(decision.Standing.Stage.Stage, decision.Leave, decision.LeaveBy, now) ? subject.WithoutWork : subject;
    }
}
