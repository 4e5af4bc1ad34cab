using System.Net;
using System.Net.Sockets;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.RateLimiting;

namespace StormClock.Service.Web;

/// <summary>Sets up the pages: services, what surrounds every answer, and the addresses.</summary>
public static class StormPages
{
    internal const string LinkLimit = "links";
    private const string TestLimit = "tests";

    /// <summary>Test messages a minute, from wherever (C).</summary>
    private const int TestsPerMinute = 6;

    /// <summary>Needs <see cref="IJobBook"/>, <see cref="Core.Acknowledgements.AckKeyRing"/> and <see cref="IClock"/> beside it.</summary>
    public static IServiceCollection AddStormPages(this IServiceCollection services, PagesSettings settings)
    {
        services.AddSingleton(settings);
        services.AddRazorComponents();
        services.AddDataProtection()
            .SetApplicationName("stormclock")
            .PersistKeysToFileSystem(new DirectoryInfo(Path.Combine(settings.DataFolder, "form-keys")));
        services.AddAntiforgery(forms =>
        {
            forms.Cookie.Name = "stormclock-form";
            forms.Cookie.SameSite = SameSiteMode.Strict;
            forms.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        });
        return services.AddRateLimiter(limits => LimitLinks(limits, settings.LinkRequestsPerMinute));
    }

    /// <summary>Before the addresses: headers that every answer carries, then the limit on links.</summary>
    public static IApplicationBuilder UseStormPages(this IApplicationBuilder app) => app.Use(PageHeaders.AddAsync).UseRateLimiter();

    public static IEndpointRouteBuilder MapStormPages(this IEndpointRouteBuilder routes)
    {
        string[] reading = [HttpMethods.Get, HttpMethods.Head];
        var link = routes.MapGroup("/j/{token}").RequireRateLimiting(LinkLimit);
        link.MapMethods("", reading, LinkEndpoints.ShowAsync);
        link.MapPost("", LinkEndpoints.AnswerAsync).WithMetadata(new Microsoft.AspNetCore.Mvc.RequestSizeLimitAttribute(LinkEndpoints.LargestForm));
        routes.MapPost("/" + TestEndpoints.Path, TestEndpoints.SendAsync).RequireRateLimiting(TestLimit).WithMetadata(new Microsoft.AspNetCore.Mvc.RequestSizeLimitAttribute(LinkEndpoints.LargestForm));
        routes.MapMethods("/c/{token}.ics", reading, CalendarEndpoints.ShowAsync).RequireRateLimiting(LinkLimit);
        routes.MapMethods("/", reading, FrontEndpoints.ShowAsync);
        routes.MapMethods("/health", reading, FrontEndpoints.HealthAsync);
        routes.MapMethods("/" + Stylesheet.Name, reading, Stylesheet.Serve);
        return routes;
    }

    private static void LimitLinks(RateLimiterOptions limits, int perMinute)
    {
        limits.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        limits.OnRejected = async (rejected, cancellation) =>
        {
            rejected.HttpContext.Response.Headers.RetryAfter = "60";
            await rejected.HttpContext.Response.WriteAsync($"{BrowserSpeech.Of(rejected.HttpContext.Request).Say("notice.too-many-requests")}\n", cancellation);
        };
        limits.AddFixedWindowLimiter(TestLimit, window => (window.PermitLimit, window.Window) = (TestsPerMinute, TimeSpan.FromMinutes(1)));
        limits.AddPolicy(LinkLimit, context => RateLimitPartition.GetFixedWindowLimiter(
            Neighbourhood(context.Connection.RemoteIpAddress),
            _ => new FixedWindowRateLimiterOptions { PermitLimit = perMinute, Window = TimeSpan.FromMinutes(1) }));
    }

    /// <summary>One IPv4 address, or the 64 bits of an IPv6 one that a single household has.</summary>
    private static string Neighbourhood(IPAddress? address) => address switch
    {
        null => "",
        { IsIPv4MappedToIPv6: true } => address.MapToIPv4().ToString(),
        { AddressFamily: AddressFamily.InterNetworkV6 } => Convert.ToHexString(address.GetAddressBytes().AsSpan(0, 8)),
        _ => address.ToString(),
    };
}
