using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;
using StormClock.Service.Web.Api.Shapes;

namespace StormClock.Service.Web.Api;

/// <summary>What the API says of itself (OpenAPI); its words are the remarks of the code.</summary>
internal static class ApiDocument
{
    public const string Name = "v1";

    private const string Time = "date-time";
    private const string Key = "key";
    private const string Visit = "visit";

    /// <summary>Begins the names of the shapes in code, and says nothing to whoever reads the document.</summary>
    private const string Mark = "Api";

    public static void Describe(OpenApiOptions options)
    {
        options.ShouldInclude = description => description.RelativePath?.StartsWith($"{ApiPages.Root[1..]}/", StringComparison.Ordinal) ?? false;
        options.CreateSchemaReferenceId = type =>
            OpenApiOptions.CreateDefaultSchemaReferenceId(type) is { } id && type.Type.Namespace == typeof(ApiTokens).Namespace && id.StartsWith(Mark, StringComparison.Ordinal) ? id[Mark.Length..]
            : OpenApiOptions.CreateDefaultSchemaReferenceId(type);
        options.AddSchemaTransformer((schema, context, _) =>
        {
            Complete(schema, context.JsonTypeInfo.Type);
            return Task.CompletedTask;
        });
        options.AddOperationTransformer((operation, context, _) =>
        {
            Secure(operation, context);
            return Task.CompletedTask;
        });
        options.AddDocumentTransformer((document, _, _) =>
        {
            Introduce(document);
            return Task.CompletedTask;
        });
    }

    /// <summary>What the writers of our own types do not tell: instants are texts, and so are tokens. A remark on a member called Item is lost on the way, as if it were an indexer's.</summary>
    private static void Complete(OpenApiSchema schema, Type type)
    {
        var plain = Nullable.GetUnderlyingType(type) ?? type;
        var orNull = plain == type ? default : JsonSchemaType.Null;
        if (plain == typeof(Instant)) (schema.Type, schema.Format) = (JsonSchemaType.String | orNull, Time);
        else if (plain.IsEnum) schema.Type = JsonSchemaType.String | orNull;
        if (schema.Properties is { } members && members.TryGetValue("item", out var member) && member is OpenApiSchema { Description: null } item) item.Description = "Id of the thing.";
        if (type == typeof(IReadOnlyDictionary<string, Instant?>)) schema.AdditionalProperties = new OpenApiSchema { Type = JsonSchemaType.String | JsonSchemaType.Null, Format = Time };
    }

    /// <summary>What only reads may also be asked by a browser that is signed in, or at the box itself.</summary>
    private static void Secure(OpenApiOperation operation, OpenApiOperationTransformerContext context)
    {
        operation.Security = [new() { [new OpenApiSecuritySchemeReference(Key, context.Document)] = [] }];
        if (HttpMethods.IsGet(context.Description.HttpMethod ?? "")) operation.Security.Add(new() { [new OpenApiSecuritySchemeReference(Visit, context.Document)] = [] });
    }

    private static void Introduce(OpenApiDocument document)
    {
        document.Info = new()
        {
            Title = "StormClock",
            Version = Name,
            Description = "The work of a garden before and after a storm. Official orders come before everything, nothing here says that it is safe, and silence is no good news. "
                + "Times are in UTC. Members may be added, none is ever renamed.",
        };
        document.Servers = [];
        document.Components ??= new();
        document.Components.SecuritySchemes = new Dictionary<string, IOpenApiSecurityScheme>
        {
            [Key] = new OpenApiSecurityScheme { Type = SecuritySchemeType.Http, Scheme = "bearer", Description = "A key made on the page /in. It may do what its owner may." },
            [Visit] = new OpenApiSecurityScheme { Type = SecuritySchemeType.ApiKey, In = ParameterLocation.Cookie, Name = StormPages.VisitCookie, Description = "Of a browser that is signed in; opens what only reads." },
        };
    }
}
