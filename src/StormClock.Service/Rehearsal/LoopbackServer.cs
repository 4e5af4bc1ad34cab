using System.Globalization;
using System.Net;
using StormClock.Service.Commands;
using StormClock.Service.Delivery.Email;

namespace StormClock.Service.Rehearsal;

/// <summary>A mail server for rehearsals: on this machine only, so that nobody is ever mailed a practice storm.</summary>
internal static class LoopbackServer
{
    public static readonly EmailSender Sender = new("StormClock rehearsal", "rehearsal@stormclock.invalid");

    public static EmailSettings? Read(Inputs inputs, string? text)
    {
        if (text is null) return null;
        if (IPEndPoint.TryParse(text, out var end) && IPAddress.IsLoopback(end.Address) && end.Port > 0)
        {
            return new(end.Address.ToString(), end.Port, EmailSecurity.None, Sender, Duration.FromSeconds(10), CheckRevocation: false);
        }

        inputs.Fault(string.Create(CultureInfo.InvariantCulture, $"--smtp: '{text}' is not a server on this machine, such as 127.0.0.1:2525"));
        return null;
    }
}
