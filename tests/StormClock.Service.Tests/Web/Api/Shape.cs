using System.Text.Json;
using System.Text.Json.Nodes;

namespace StormClock.Service.Tests.Web.Api;

/// <summary>Checks a value against the part of JSON Schema that the API's document uses; members that are not described are faults.</summary>
internal static class Shape
{
    public static IEnumerable<string> Faults(JsonNode? value, JsonNode shape, JsonObject shapes, string at)
    {
        if ((string?)shape["$ref"] is { } way) return Faults(value, shapes[way.Split('/')[^1]]!, shapes, at);
        if (shape["oneOf"] is JsonArray choices) return choices.Any(choice => !Faults(value, choice!, shapes, at).Any()) ? [] : [$"{at}: none of its shapes"];
        if (shape["enum"] is JsonArray tokens) return tokens.Any(token => JsonNode.DeepEquals(token, value)) ? [] : [$"{at}: {value} is no token"];
        var type = Type(value);
        var types = shape["type"] is JsonArray several ? several.Select(one => (string)one!) : [(string)shape["type"]!];
        if (!types.Contains(type) && !(type == "integer" && types.Contains("number"))) return [$"{at}: is {type}"];
        return value switch
        {
            JsonArray list => list.SelectMany((item, i) => Faults(item, shape["items"]!, shapes, $"{at}[{i}]")),
            JsonObject members => Members(members, shape, shapes, at),
            _ when (string?)shape["format"] == "date-time" && value is not null && !NodaTime.Text.InstantPattern.General.Parse((string)value!).Success => [$"{at}: {value} is no instant"],
            _ => [],
        };
    }

    private static IEnumerable<string> Members(JsonObject members, JsonNode shape, JsonObject shapes, string at)
    {
        foreach (var required in shape["required"]?.AsArray() ?? [])
        {
            if (!members.ContainsKey((string)required!)) yield return $"{at}: no {required}";
        }

        foreach (var (name, member) in members)
        {
            if ((shape["properties"]?[name] ?? shape["additionalProperties"]) is not { } known) yield return $"{at}: {name} is not described";
            else foreach (var fault in Faults(member, known, shapes, $"{at}.{name}")) yield return fault;
        }
    }

    private static string Type(JsonNode? value) => value?.GetValueKind() switch
    {
        null => "null",
        JsonValueKind.Object => "object",
        JsonValueKind.Array => "array",
        JsonValueKind.String => "string",
        JsonValueKind.True or JsonValueKind.False => "boolean",
        JsonValueKind.Number => value.ToJsonString().AsSpan().IndexOfAny('.', 'e', 'E') < 0 ? "integer" : "number",
        _ => "?",
    };
}
