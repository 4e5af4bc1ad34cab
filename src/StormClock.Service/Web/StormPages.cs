using System.Net;
using System.Net.Sockets;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.RateLimiting;
using StormClock.Service.Visits;
using StormClock.Service.Web.Api;

namespace StormClock.Service.Web;

/// <summary>Sets up the pages: services, what surrounds every answer, and the addresses.</summary>
public static class StormPages
{
    internal const string LinkLimit = "links";
    internal const string SignInLimit = "sign-in";
    internal const string TestLimit = "tests";

    /// <summary>Holds the id of a visit, signed.</summary>
    internal const string VisitCookie = "stormclock-visit";

    /// <summary>Test messages a minute, from wherever (C).</summary>
    private const int TestsPerMinute = 6;

    /// <summary>Tries to come in a minute from one address (C): a person mistypes; a program that guesses gets nowhere.</summary>
    private const int SignInsPerMinute = 10;

    /// <summary>Requests of any sort for each one on a link page: a household behind one address walks its garden page by page (C).</summary>
    private const int RequestsPerLink = 20;

    /// <summary>Of a form without pictures; photos have a bound of their own.</summary>
    private const long LargestBody = 256 * 1024;

    /// <summary>What is text and large. Calendars are left alone: the mark they are asked again by holds for their own bytes.</summary>
    private static readonly string[] Compressed = ["text/html", "text/css", "text/javascript", "image/svg+xml", "application/json"];

    /// <summary>Needs <see cref="Doorkeeper"/>, <see cref="IJobBook"/>, <see cref="Core.Acknowledgements.AckKeyRing"/> and <see cref="IClock"/> beside it.</summary>
    public static IServiceCollection AddStormPages(this IServiceCollection services, PagesSettings settings)
    {
        services.AddSingleton(settings);
        services.Configure<Microsoft.AspNetCore.Server.Kestrel.Core.KestrelServerOptions>(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = LargestBody;
        });
        services.AddResponseCompression(answers => answers.MimeTypes = Compressed);
        services.AddAuthentication(Doorkeeper.Scheme).AddCookie(Doorkeeper.Scheme, visit =>
        {
            visit.Cookie.Name = VisitCookie;
            visit.Cookie.HttpOnly = true;
            // Lax: a link in a mail must find its reader signed in; what changes anything is a form, which carries a token of its own.
            visit.Cookie.SameSite = SameSiteMode.Lax;
            visit.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
            visit.ExpireTimeSpan = SignInDesk.VisitLife.ToTimeSpan();
            visit.SlidingExpiration = false;
        });
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
        return services.AddRateLimiter(limits => Limit(limits, settings.LinkRequestsPerMinute));
    }

    /// <summary>Before the addresses: headers that every answer carries, our own names only, the limits, and who it is.</summary>
    public static IApplicationBuilder UseStormPages(this IApplicationBuilder app)
    {
        var services = app.ApplicationServices;
        return app.Use(PageHeaders.AddAsync)
            .Use(new HostNames(services.GetRequiredService<PagesSettings>()).CheckAsync)
            .UseRateLimiter()
            .UseResponseCompression()
            .Use(services.GetRequiredService<Doorkeeper>().NoteAsync);
    }

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

        // Browsers ask for it wherever a page may show pictures; there is none, and that is no fault.
        routes.MapMethods("/favicon.ico", reading, () => TypedResults.NoContent());
        return routes;
    }

    private static void Limit(RateLimiterOptions limits, int perMinute)
    {
        limits.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        limits.OnRejected = async (rejected, cancellation) =>
        {
            rejected.HttpContext.Response.Headers.RetryAfter = "60";
            if (ApiPages.IsApi(rejected.HttpContext.Request)) await ApiProblem.TooMany.ExecuteAsync(rejected.HttpContext);
            else await rejected.HttpContext.Response.WriteAsync($"{BrowserSpeech.Of(rejected.HttpContext.Request).Say("notice.too-many-requests")}\n", cancellation);
        };
        limits.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(context => PerMinute(context, (int)Math.Min(int.MaxValue, (long)perMinute * RequestsPerLink)));
        limits.AddPolicy(SignInLimit, context => PerMinute(context, SignInsPerMinute));
        limits.AddFixedWindowLimiter(TestLimit, window => (window.PermitLimit, window.Window) = (TestsPerMinute, TimeSpan.FromMinutes(1)));
        limits.AddPolicy(LinkLimit, context => PerMinute(context, perMinute));
    }

    private static RateLimitPartition<string> PerMinute(HttpContext context, int most) => RateLimitPartition.GetFixedWindowLimiter(
        Neighbourhood(context.Connection.RemoteIpAddress),
        _ => new FixedWindowRateLimiterOptions { PermitLimit = most, Window = TimeSpan.FromMinutes(1) });

    /// <summary>One IPv4 address, or the 64 bits of an IPv6 one that a single household has.</summary>
    private static string Neighbourhood(IPAddress? address) => address switch
    {
        null => "",
        { IsIPv4MappedToIPv6: true } => address.MapToIPv4().ToString(),
        { AddressFamily: AddressFamily.InterNetworkV6 } => Convert.ToHexString(address.GetAddressBytes().AsSpan(0, 8)),
        _ => address.ToString(),
    };
}
