using System.Buffers;
using System.Net;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using MimeKit;
using SmtpServer;
using SmtpServer.Authentication;
using SmtpServer.ComponentModel;
using SmtpServer.Net;
using SmtpServer.Protocol;
using SmtpServer.Storage;
using SmtpReply = SmtpServer.Protocol.SmtpResponse;

namespace StormClock.Service.Tests.Delivery.Email;

/// <summary>A real mail server in this process, on loopback, on a port the system chooses.</summary>
internal sealed class SmtpHost : MessageStore, IAsyncDisposable
{
    private readonly CancellationTokenSource stop = new();
    private readonly SmtpReply answer;
    private readonly Func<MimeMessage, Task> beforeAnswer;
    private readonly Lock gate = new();
    private readonly Task running;

    /// <param name="answer">To every letter; 250 when null.</param>
    /// <param name="certificate">Offers STARTTLS when given.</param>
    /// <param name="login">Demands this name and password when given.</param>
    /// <param name="beforeAnswer">Runs when a letter has arrived and its answer has not gone out.</param>
    public SmtpHost(
        SmtpReply? answer = null, X509Certificate2? certificate = null, (string User, string Password)? login = null, Func<MimeMessage, Task>? beforeAnswer = null)
    {
        this.answer = answer ?? SmtpReply.Ok;
        this.beforeAnswer = beforeAnswer ?? (_ => Task.CompletedTask);
        var options = new SmtpServerOptionsBuilder().ServerName("localhost").Endpoint(endpoint =>
        {
            endpoint.Endpoint(new IPEndPoint(IPAddress.Loopback, 0));
            if (certificate is not null) endpoint.Certificate(certificate);
            if (login is not null) endpoint.AuthenticationRequired().AllowUnsecureAuthentication();
        }).Build();

        var started = new TaskCompletionSource<int>();
        var listeners = new EndpointListenerFactory();
        listeners.EndpointStarted += (_, e) => started.TrySetResult(((IPEndPoint)e.LocalEndPoint).Port);
        var services = new ServiceProvider();
        services.Add(listeners);
        services.Add((IMessageStore)this);
        if (login is var (user, password))
        {
            services.Add((IUserAuthenticator)new DelegatingUserAuthenticator((name, word) => name == user && word == password));
        }

        running = new SmtpServer.SmtpServer(options, services).StartAsync(stop.Token);
        Port = started.Task.GetAwaiter().GetResult();
    }

    public int Port { get; }

    /// <summary>Every letter that arrived, whatever was answered.</summary>
    public List<MimeMessage> Letters { get; } = [];

    /// <summary>The same letters as they came over the wire.</summary>
    public List<string> Raw { get; } = [];

    public override async Task<SmtpReply> SaveAsync(
        ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
    {
        using var stream = new MemoryStream(buffer.ToArray());
        var letter = await MimeMessage.LoadAsync(stream, cancellationToken);
        lock (gate)
        {
            Letters.Add(letter);
            Raw.Add(Encoding.UTF8.GetString(buffer.ToArray()));
        }

        await beforeAnswer(letter);
        return answer;
    }

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await running;
        stop.Dispose();
    }
}
