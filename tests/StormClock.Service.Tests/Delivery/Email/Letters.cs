using StormClock.Service.Delivery;
using StormClock.Service.Delivery.Email;

namespace StormClock.Service.Tests.Delivery.Email;

/// <summary>Messages and settings that the delivery tests share.</summary>
internal static class Letters
{
    public static EmailSender From { get; } = new("Garden box", "box@garden.example");

    public static Outgoing Sample { get; } = new(
        "e-3f9c", "e-3f9c@garden.example", "quay-end.e1@garden.example", "Adà Vale", "ada@garden.example",
        "Stop by Tue 14:00 EDT: Main work, Quay End", "Unsafe wind could come.\nWeigh down: pots – 4\n.\n.. two dots\n",
        "<!DOCTYPE html><html lang=\"en\"><p>Weigh down: pots – 4</p></html>", Instant.FromUtc(2027, 9, 20, 10, 30));

    public static EmailSettings Settings(int port, EmailSecurity security = EmailSecurity.None, double timeoutSeconds = 10) =>
        new("127.0.0.1", port, security, From, Duration.FromSeconds(timeoutSeconds), CheckRevocation: false);
}
