using System.Security.Authentication;
using Polly.CircuitBreaker;
using Polly.Timeout;

namespace StormClock.Service.Feeds.Web;

/// <summary>What went wrong below HTTP, as a value with words for the keeper.</summary>
internal static class FetchFaults
{
    public static bool Is(Exception fault) => fault is HttpRequestException or IOException or InvalidDataException or TimeoutRejectedException or BrokenCircuitException;

    public static Fetched Of(Exception fault) => fault switch
    {
        HttpRequestException { InnerException: AuthenticationException inner } =>
            Fetched.Fails($"its certificate is not accepted: {inner.Message}"),
        HttpRequestException { HttpRequestError: HttpRequestError.NameResolutionError } =>
            Passing("its name is not known to the network (DNS)"),
        HttpRequestException { HttpRequestError: HttpRequestError.ConnectionError } =>
            Passing("no connection could be made"),
        TimeoutRejectedException => Passing("it did not answer in time"),
        InvalidDataException => Passing("the compressed answer is cut off or damaged"),
        BrokenCircuitException => Fetched.Fails("its host has failed again and again and is left alone for some minutes"),
        _ => Passing($"the connection broke off before the answer was whole ({fault.Message})"),
    };

    private static Fetched Passing(string trouble) => Fetched.Fails(trouble, passing: true) with { IsHostFault = true };
}
