using MimeKit;
using StormClock.Service.Delivery;
using StormClock.Service.Delivery.Email;

namespace StormClock.Service.Tests.Delivery.Email;

public sealed class EmlChannelTests : IDisposable
{
    private readonly DirectoryInfo data = Directory.CreateTempSubdirectory("stormclock-eml-");

    private string Outgoing => Path.Combine(data.FullName, "outgoing");

    public void Dispose() => data.Delete(recursive: true);

    [Fact]
    public async Task Send_Message_IsAFileThatMailProgramsRead()
    {
        Assert.Equal(DeliveryResult.Delivered, (await SendAsync(Letters.Sample)).Result);
        var file = Assert.Single(Directory.GetFiles(Outgoing));
        Assert.Equal("20270920T103000Z-e-3f9c.eml", Path.GetFileName(file));
        var letter = await MimeMessage.LoadAsync(file, TestContext.Current.CancellationToken);
        Assert.Equal(Letters.Sample.Text, letter.TextBody!.ReplaceLineEndings("\n"));
        Assert.Equal(Letters.Sample.Subject, letter.Subject);
    }

    [Fact]
    public async Task Send_Again_MakesNoSecondFile()
    {
        await SendAsync(Letters.Sample);
        var first = await File.ReadAllBytesAsync(Directory.GetFiles(Outgoing).Single(), TestContext.Current.CancellationToken);
        Assert.Equal(DeliveryResult.Delivered, (await SendAsync(Letters.Sample)).Result);
        Assert.Equal(first, await File.ReadAllBytesAsync(Assert.Single(Directory.GetFiles(Outgoing)), TestContext.Current.CancellationToken));
    }

    /// <summary>A power cut left half a file: it is written over, and only the whole one counts.</summary>
    [Fact]
    public async Task Send_AfterACrashWhileWriting_EndsWithOneWholeFile()
    {
        Directory.CreateDirectory(Outgoing);
        var half = Path.Combine(Outgoing, EmlChannel.FileName(Letters.Sample) + ".part");
        await File.WriteAllTextAsync(half, "From: half", TestContext.Current.CancellationToken);
        Assert.Equal(DeliveryResult.Delivered, (await SendAsync(Letters.Sample)).Result);
        Assert.EndsWith(".eml", Assert.Single(Directory.GetFiles(Outgoing)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("../../escape")]
    [InlineData("a/b")]
    [InlineData("")]
    [InlineData("nul\0")]
    public void FileName_HostileEntryId_StaysInTheFolder(string entryId) =>
        Assert.Matches("^20270920T103000Z-[0-9a-f]{32}\\.eml$", EmlChannel.FileName(Letters.Sample with { EntryId = entryId }));

    [Fact]
    public async Task Send_FolderCannotBeMade_IsTriedAgain()
    {
        await File.WriteAllTextAsync(Outgoing, "a file where the folder should be", TestContext.Current.CancellationToken);
        Assert.Equal(DeliveryResult.TryAgain, (await SendAsync(Letters.Sample)).Result);
    }

    private Task<DeliveryOutcome> SendAsync(Outgoing message) =>
        new EmlChannel(Outgoing, Letters.From).SendAsync(message, TestContext.Current.CancellationToken);
}
