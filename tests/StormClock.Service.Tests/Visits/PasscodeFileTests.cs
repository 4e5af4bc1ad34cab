using StormClock.Service.Tests.Store;
using StormClock.Service.Visits;

namespace StormClock.Service.Tests.Visits;

public class PasscodeFileTests
{
    private const string Good = "tern hook four oars";

    [Fact]
    public void Matches_AfterSet_TakesThatPasscodeOnly()
    {
        using var folder = new TempFolder();
        var file = new PasscodeFile(folder.File("passcode"));
        Assert.Equal((false, false), (file.IsSet, file.Matches(Good)));

        file.Set(Good);
        var first = file.Mark;

        Assert.True(file.Matches(Good));
        Assert.True(file.Matches($" {Good}\t"));
        Assert.False(file.Matches(Good + "s"));
        Assert.False(file.Matches(""));
        Assert.DoesNotContain("tern", File.ReadAllText(folder.File("passcode")), StringComparison.Ordinal);
        if (!OperatingSystem.IsWindows()) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(folder.File("passcode")));

        file.Set("another four words here");
        Assert.False(file.Matches(Good));
        Assert.NotEqual(first, file.Mark);
    }

    [Theory]
    [InlineData("")]
    [InlineData("!!!")]
    [InlineData("AQAAAAIAAYag")]
    public void Matches_SpoiltFile_LetsNobodyIn(string content)
    {
        using var folder = new TempFolder();
        File.WriteAllText(folder.File("passcode"), content);
        Assert.False(new PasscodeFile(folder.File("passcode")).Matches(Good));
    }

    /// <summary>15 characters: NIST SP 800-63B revision 4, section 3.1.1.2.</summary>
    [Theory]
    [InlineData("fourteen chars", false)]
    [InlineData("fifteen chars!!", true)]
    [InlineData("   fourteen chars   ", false)]
    public void IsGood_ByLength(string passcode, bool good) => Assert.Equal(good, PasscodeFile.IsGood(passcode));
}
