using System.Net;
using System.Net.Sockets;

namespace StormClock.Service.Delivery.Push;

/// <summary>
/// Keeps what strangers name away from the house: a subscription says where this box is to post, so it must not point into
/// the keeper's own network. Names are looked at when they are given, addresses at each connection, since a name may lead
/// elsewhere later.
/// </summary>
public static class PublicInternet
{
    private const int LongestEndpoint = 1500;

    /// <summary>Names that never belong to the public Internet (RFC 6761, 6762, 8375, and usual in houses).</summary>
    private static readonly string[] HouseNames = ["localhost", "local", "internal", "intranet", "lan", "home", "corp", "private", "invalid", "test", "arpa", "onion"];

    private static readonly IPNetwork[] NotPublic4 =
    [
        .. new[]
        {
            "0.0.0.0/8", "10.0.0.0/8", "100.64.0.0/10", "127.0.0.0/8", "169.254.0.0/16", "172.16.0.0/12", "192.0.0.0/24", "192.0.2.0/24",
            "192.168.0.0/16", "198.18.0.0/15", "198.51.100.0/24", "203.0.113.0/24", "224.0.0.0/3",
        }.Select(IPNetwork.Parse),
    ];

    private static readonly IPNetwork GlobalUnicast6 = IPNetwork.Parse("2000::/3");
    private static readonly IPNetwork[] NotPublic6 = [IPNetwork.Parse("2001::/23"), IPNetwork.Parse("2001:db8::/32"), IPNetwork.Parse("2002::/16")];

    /// <summary>IPv4 behind a translator (RFC 6052): the last four bytes are the address that is reached.</summary>
    private static readonly IPNetwork Translated = IPNetwork.Parse("64:ff9b::/96");

    /// <summary>The endpoint, or null when it may not be posted to: https and a public host name, nothing else.</summary>
    /// <param name="allowLoopback">For tests: this machine too, and without encryption there.</param>
    public static Uri? Endpoint(string text, bool allowLoopback)
    {
        // Browsers write addresses in plain letters; other forms of letters and digits may mean another host than they seem to.
        if (text.Length > LongestEndpoint || !text.All(char.IsAscii) || !Uri.TryCreate(text, UriKind.Absolute, out var at) || at.UserInfo.Length > 0 || at.Fragment.Length > 0) return null;
        if (allowLoopback && at.IsLoopback) return at;

        return at is { Scheme: "https", HostNameType: UriHostNameType.Dns } && IsPublicName(at.IdnHost.TrimEnd('.')) ? at : null;
    }

    public static bool IsPublic(IPAddress address)
    {
        if (address.IsIPv4MappedToIPv6) return IsPublic(address.MapToIPv4());
        if (address.AddressFamily == AddressFamily.InterNetwork) return !NotPublic4.Any(network => network.Contains(address));
        if (Translated.Contains(address)) return IsPublic(new IPAddress(address.GetAddressBytes().AsSpan(12)));

        return GlobalUnicast6.Contains(address) && !NotPublic6.Any(network => network.Contains(address));
    }

    /// <summary>A client that connects to public addresses only, whatever a name says by now, and follows no redirect.</summary>
    public static HttpClient Client(bool allowLoopback) => new(new SocketsHttpHandler
    {
        AllowAutoRedirect = false,
        UseProxy = false,
        PooledConnectionLifetime = TimeSpan.FromMinutes(15),
        ConnectCallback = async (context, cancellation) =>
        {
            var (host, port) = (context.DnsEndPoint.Host, context.DnsEndPoint.Port);
            var addresses = (await Dns.GetHostAddressesAsync(host, cancellation))
                .Where(address => IsPublic(address) || (allowLoopback && IPAddress.IsLoopback(address)))
                .ToArray();
            if (addresses.Length == 0) throw new HttpRequestException(HttpRequestError.ConnectionError, $"{host} is in no public network");

            var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
            try
            {
                await socket.ConnectAsync(addresses, port, cancellation);
                return new NetworkStream(socket, ownsSocket: true);
            }
            catch
            {
                socket.Dispose();
                throw;
            }
        },
    }) { Timeout = TimeSpan.FromSeconds(30) };

    /// <summary>At least two labels none of them empty, the last one no number (a number there makes an address of it) and not of the house.</summary>
    private static bool IsPublicName(string host)
    {
        var labels = host.Split('.');
        return labels.Length >= 2
            && labels.All(label => label.Length > 0)
            && !IPAddress.TryParse(host, out _)
            && !char.IsAsciiDigit(labels[^1][0])
            && !HouseNames.Contains(labels[^1], StringComparer.OrdinalIgnoreCase);
    }
}
