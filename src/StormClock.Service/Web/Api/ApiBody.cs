using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Net.Http.Headers;
using StormClock.Core.Acknowledgements;
using StormClock.Core.Recheck;

namespace StormClock.Service.Web.Api;

/// <summary>Reads what a program sends: one JSON object of the very shape, or nothing of it.</summary>
internal static class ApiBody
{
    /// <summary>Bytes. The longest note fits many times.</summary>
    public const long Largest = 16 * 1024;

    public const string MediaType = "application/json";

    private static readonly JsonSerializerOptions Strict = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        AllowDuplicateProperties = false,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        MaxDepth = 4,
        Converters = { new Token<JobAnswer>(), new Token<OutcomeKind>() },
    };

    /// <summary>The body, or why it was not taken.</summary>
    /// <param name="wanted">What is taken, to end a sentence.</param>
    public static async Task<(T? Body, ProblemHttpResult? Refusal)> ReadAsync<T>(HttpContext context, string wanted)
        where T : class
    {
        if (!IsJson(context.Request)) return (null, ApiProblem.NotJson);
        try
        {
            var body = await JsonSerializer.DeserializeAsync<T>(context.Request.Body, Strict, context.RequestAborted);
            return body is null ? (null, ApiProblem.Unread(null, wanted)) : (body, null);
        }
        catch (JsonException trouble)
        {
            return (null, ApiProblem.Unread(trouble, wanted));
        }
        catch (BadHttpRequestException odd)
        {
            return (null, odd.StatusCode == StatusCodes.Status413PayloadTooLarge ? ApiProblem.TooLarge : ApiProblem.Unread(null, wanted));
        }
    }

    private static bool IsJson(HttpRequest request) =>
        MediaTypeHeaderValue.TryParse(request.ContentType, out var type)
        && type.MediaType.Equals(MediaType, StringComparison.OrdinalIgnoreCase)
        && (!type.Charset.HasValue || type.Charset.Equals("utf-8", StringComparison.OrdinalIgnoreCase));

    /// <summary>A token and nothing else; the converter that writes them would also take numbers, other cases and lists with commas.</summary>
    private sealed class Token<TEnum> : JsonConverter<TEnum>
        where TEnum : struct, Enum
    {
        private static readonly Dictionary<string, TEnum> Known = Enum.GetValues<TEnum>().ToDictionary(Shapes.ApiTokens.Of);

        public override TEnum Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.String && Known.TryGetValue(reader.GetString()!, out var value) ? value : throw new JsonException();

        public override void Write(Utf8JsonWriter writer, TEnum value, JsonSerializerOptions options) => throw new NotSupportedException();
    }
}
