using StormClock.Service.Web;

namespace StormClock.Service.Tests.Web;

public sealed class AckKeyFileTests : IDisposable
{
    private readonly DirectoryInfo data = Directory.CreateTempSubdirectory("stormclock-keys-");

    private string File => Path.Combine(data.FullName, "link-keys");

    public void Dispose() => data.Delete(recursive: true);

    [Fact]
    public void Read_NoFile_MakesAKeyThatStays()
    {
        var made = AckKeyFile.ReadOrMake(File).Value!;
        var read = AckKeyFile.ReadOrMake(File).Value!;
        Assert.Equal(made.Newest.Secret.ToArray(), read.Newest.Secret.ToArray());
        Assert.Equal("link-keys", Assert.Single(data.GetFiles()).Name);
    }

    [Fact]
    public void Read_MadeFile_IsForItsOwnerOnly()
    {
        AckKeyFile.ReadOrMake(File);
        if (OperatingSystem.IsWindows()) Assert.Skip("no such modes there");
        else Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, System.IO.File.GetUnixFileMode(File));
    }

    [Fact]
    public void Read_NewKeyOnTop_SignsAndTheOldOneStillOpens()
    {
        AckKeyFile.ReadOrMake(File);
        System.IO.File.WriteAllText(File, $"k2 {Convert.ToBase64String(new byte[32])}\n{System.IO.File.ReadAllText(File)}");
        var ring = AckKeyFile.ReadOrMake(File).Value!;
        Assert.Equal("k2", ring.Newest.Id);
        Assert.Equal(["k2", "k1"], ring.Keys.Select(key => key.Id));
    }

    [Theory]
    [InlineData("", 1)]
    [InlineData("k1\n", 2)]
    [InlineData("k1 AAAA\n", 2)]
    [InlineData("k1 not-base64!\nk2 AAAA\n", 3)]
    public void Read_BadFile_NamesEveryFault(string text, int faults)
    {
        System.IO.File.WriteAllText(File, text);
        Assert.Equal(faults, AckKeyFile.ReadOrMake(File).Faults.Count);
    }
}
