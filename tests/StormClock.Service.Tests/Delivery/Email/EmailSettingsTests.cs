using StormClock.Service.Delivery.Email;

namespace StormClock.Service.Tests.Delivery.Email;

public class EmailSettingsTests
{
    private static readonly EmailSettings Good = new(
        "mail.garden.example", 587, EmailSecurity.StartTls, Letters.From, Duration.FromSeconds(30), true, "box", "open sesame");

    [Fact]
    public void Faults_OfGoodSettings_AreNone() => Assert.Empty(Good.Faults());

    [Fact]
    public void Faults_AreAllNamedAtOnce()
    {
        var bad = new EmailSettings("", 0, EmailSecurity.StartTls, new("x", "x"), Duration.Zero, true, null, "a", "b");
        Assert.Equal(6, bad.Faults().Count);
    }

    [Theory]
    [InlineData("localhost", true)]
    [InlineData("127.0.0.1", true)]
    [InlineData("::1", true)]
    [InlineData("mail.garden.example", false)]
    [InlineData("192.168.1.4", false)]
    [InlineData("localhost.garden.example", false)]
    public void Faults_WithoutEncryption_OnlyThisMachineIsGood(string host, bool good) =>
        Assert.Equal(good, (Good with { Host = host, Security = EmailSecurity.None }).Faults().Count == 0);

    [Fact]
    public void Channel_OfFaultySettings_IsABug() =>
        Assert.Throws<ArgumentException>(() => new SmtpChannel(Good with { Security = EmailSecurity.None }));

    [Fact]
    public void ToString_KeepsThePassword() => Assert.DoesNotContain("sesame", $"{Good}", StringComparison.Ordinal);
}
