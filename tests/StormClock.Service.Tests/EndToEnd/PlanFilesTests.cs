using System.Text.Json;
using System.Xml.Linq;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;
using UglyToad.PdfPig;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary><c>plan --sheet</c> and <c>--picture</c> over the practice storm.</summary>
public sealed class PlanFilesTests : IDisposable
{
    private readonly TempFolder folder = new();

    [Fact]
    public async Task Plan_SheetAndPicture_AreWrittenBesideTheJson()
    {
        var (sheet, picture) = (folder.File("plan.pdf"), folder.File("plan.svg"));
        var result = await RunAsync("--sheet", sheet, "--picture", picture, "--json");
        Assert.Equal((0, ""), (result.Exit, result.Errors));
        var jobs = JsonDocument.Parse(result.Output).RootElement.GetProperty("jobs").GetArrayLength();
        Assert.True(jobs > 10);

        using var pdf = PdfDocument.Open(sheet);
        Assert.InRange(pdf.NumberOfPages, 1, 2);
        var text = string.Concat(pdf.GetPages().Select(page => page.Text));
        Assert.Equal(jobs, text.Split("Start ").Length - 1);
        Assert.Equal("svg", XDocument.Load(picture).Root!.Name.LocalName);
    }

    [Theory]
    [InlineData("--sheet")]
    [InlineData("--picture")]
    public async Task Plan_FileThatCannotBeWritten_IsOutsideTrouble(string option)
    {
        var result = await RunAsync(option, Path.Combine(folder.File("nowhere"), "plan"));
        Assert.Equal(3, result.Exit);
        Assert.Contains("nowhere", Assert.Single(result.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Plan_FarFromTheMessages_SaysWhenTheyAreFrom()
    {
        var result = await RunAsync("--now", "2026-09-20T10:00Z");
        Assert.Equal(0, result.Exit);
        Assert.Contains("2027-09-19T09:00Z", Assert.Single(result.ErrorLines), StringComparison.Ordinal);
    }

    public void Dispose() => folder.Dispose();

    private static Task<CommandResult> RunAsync(params string[] more) => CommandRun.RunAsync(
        ["plan", "--garden", Path.Combine(ConfigFiles.Folder, "practice", "garden-tern-hook.yaml"), "--advisories", Path.Combine(ConfigFiles.Folder, "practice", "storm"),
            .. more.Contains("--now") ? more : [.. more, "--now", "2027-09-20T10:00Z"]]);
}
