using System.Net.Sockets;
using System.Security.Cryptography;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using StormClock.Service.Messages;

namespace StormClock.Service.Delivery.Email;

/// <summary>What a fault on the way means for the message.</summary>
internal static class SmtpFaults
{
    private const int LongestDetail = 300;

    /// <summary>Faults of the network, the server or the set-up, as against bugs of ours.</summary>
    public static bool IsOutside(Exception fault) =>
        fault is SmtpCommandException or ProtocolException or AuthenticationException or SslHandshakeException
            or ServiceNotAuthenticatedException or ServiceNotConnectedException or NotSupportedException or OperationCanceledException or TimeoutException or SocketException
            or IOException or UnauthorizedAccessException or CryptographicException;

    /// <summary>A server that says no to one letter may take the next, except with 421 (RFC 5321, 3.8); after anything else nobody knows where the conversation stands.</summary>
    public static bool EndsConnection(Exception fault) => fault is not SmtpCommandException { StatusCode: not SmtpStatusCode.ServiceNotAvailable };

    /// <summary>Before the letter is handed over every fault can be mended by time or by the keeper.</summary>
    public static DeliveryOutcome WhileConnecting(Exception fault) => Outcome(DeliveryResult.TryAgain, fault);

    /// <summary>4xx may be taken later, 5xx never; a server that wants a login first is the keeper's to mend (RFC 4954).</summary>
    public static DeliveryOutcome WhileSending(Exception fault, bool contentBegan) => fault switch
    {
        SmtpCommandException { StatusCode: var status } answer when (int)status is 530 or 534 or 535 or 538 => Outcome(DeliveryResult.TryAgain, answer),
        SmtpCommandException { StatusCode: var status } answer when (int)status >= 500 => Outcome(DeliveryResult.Refused, answer),
        SmtpCommandException answer => Outcome(DeliveryResult.TryAgain, answer),
        ServiceNotAuthenticatedException => Outcome(DeliveryResult.TryAgain, fault),
        NotSupportedException => Outcome(DeliveryResult.Refused, fault),
        _ => Outcome(contentBegan ? DeliveryResult.Unknown : DeliveryResult.TryAgain, fault),
    };

    public static string Detail(string said) => Plain.Cut(said, LongestDetail);

    private static DeliveryOutcome Outcome(DeliveryResult result, Exception fault) => new(result, Detail(fault switch
    {
        SmtpCommandException answer => $"{(int)answer.StatusCode} {answer.Message}",
        OperationCanceledException => "The server took too long, or the service was told to stop.",
        _ => fault.Message,
    }));
}
