using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.OpenApi;
using StormClock.Service.Tests.Visits;

namespace StormClock.Service.Tests.Web.Api;

/// <summary>What the API says of itself is whole, valid and true.</summary>
public class ApiDocumentTests(ApiHost host) : IClassFixture<ApiHost>
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Document_ReadByTheStandardsReader_HasNoFault()
    {
        var read = OpenApiDocument.Parse(await host.Program("stranger").GetStringAsync("openapi.json", Cancellation), "json");
        Assert.Empty(read.Diagnostic!.Errors);
        Assert.Empty(read.Diagnostic.Warnings);
        Assert.NotNull(read.Document!.Components!.SecuritySchemes!["key"]);
    }

    [Fact]
    public async Task Document_EachMappedAddress_StandsInIt()
    {
        var document = await DocumentAsync();
        var mapped = from endpoint in host.Host.Service.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
                     let path = "/" + endpoint.RoutePattern.RawText!.TrimStart('/')
                     where path.StartsWith("/api/", StringComparison.Ordinal) && !path.EndsWith("/openapi.json", StringComparison.Ordinal)
                     from method in endpoint.Metadata.GetMetadata<HttpMethodMetadata>()!.HttpMethods
                     select $"{method} {path}";
        var told = from path in document["paths"]!.AsObject() from operation in path.Value!.AsObject() select $"{operation.Key.ToUpperInvariant()} {path.Key}";
        Assert.Equal(mapped.Order(StringComparer.Ordinal), told.Order(StringComparer.Ordinal));
        Assert.Equal(10, mapped.Count());
    }

    [Fact]
    public async Task Document_EachOperation_HasItsWordsAnswersAndKey()
    {
        var document = await DocumentAsync();
        foreach (var (path, operations) in document["paths"]!.AsObject())
        {
            foreach (var (method, operation) in operations!.AsObject())
            {
                Assert.NotEmpty((string)operation!["summary"]!);
                Assert.NotEmpty((string)operation["operationId"]!);
                Assert.All(operation["parameters"]?.AsArray() ?? [], parameter => Assert.NotEmpty((string)parameter!["description"]!));
                Assert.Equal(path.Count(letter => letter == '{'), operation["parameters"]?.AsArray().Count(parameter => (string)parameter!["in"]! == "path") ?? 0);
                Assert.NotNull(operation["responses"]!["200"]!["content"]!["application/json"]!["schema"]!["$ref"]);
                Assert.All(operation["responses"]!.AsObject().Where(answer => answer.Key != "200"), answer => Assert.NotNull(answer.Value!["content"]!["application/problem+json"]));
                Assert.Equal(method == "post" ? ["key"] : ["key", "visit"], operation["security"]!.AsArray().SelectMany(way => way!.AsObject()).Select(way => way.Key));
                if (method == "post") Assert.NotNull(operation["requestBody"]!["content"]!["application/json"]!["schema"]!["$ref"]);
            }
        }
    }

    [Fact]
    public async Task Document_EachMemberOfOurs_IsDescribed()
    {
        var document = await DocumentAsync();
        var shapes = document["components"]!["schemas"]!.AsObject().Where(shape => shape.Key != "ProblemDetails" && shape.Value!["properties"] is not null).ToList();
        Assert.True(shapes.Count > 20, $"{shapes.Count}");
        Assert.All(shapes, shape =>
        {
            Assert.NotEmpty((string)shape.Value!["description"]!);
            Assert.All(shape.Value["properties"]!.AsObject(), member => Assert.True(member.Value!.ToJsonString().Contains("\"description\"", StringComparison.Ordinal), $"{shape.Key}.{member.Key}"));
        });
    }

    [Theory]
    [InlineData("gardens", "Gardens")]
    [InlineData("gardens/tern-hook/now", "Now")]
    [InlineData("gardens/tern-hook/jobs", "Jobs")]
    [InlineData("gardens/tern-hook/plan", "PlanDocument")]
    [InlineData("gardens/tern-hook/items", "Items")]
    [InlineData("gardens/tern-hook/storms", "Storms")]
    [InlineData("gardens/tern-hook/after", "After")]
    public async Task Document_EachAnswer_FitsItsShape(string path, string shape)
    {
        var shapes = (await DocumentAsync())["components"]!["schemas"]!.AsObject();
        Assert.Empty(Shape.Faults(await ApiCaller.ReadAsync(host.Program("gardener"), path), shapes[shape]!, shapes, shape));
    }

    /// <summary>So that the test above can fail.</summary>
    [Theory]
    [InlineData("""{"gardens":[{"id":"a","name":"b","stage":"calm","leave":false}]}""")]
    [InlineData("""{"gardens":[{"id":"a","name":"b","stage":null}]}""")]
    [InlineData("""{"gardens":[{"id":1,"name":"b","stage":null,"leave":false}]}""")]
    [InlineData("""{"gardens":[],"more":1}""")]
    public async Task Shape_OfAnother_HasFaults(string json)
    {
        var shapes = (await DocumentAsync())["components"]!["schemas"]!.AsObject();
        Assert.NotEmpty(Shape.Faults(JsonNode.Parse(json), shapes["Gardens"]!, shapes, "Gardens"));
    }

    private async Task<JsonObject> DocumentAsync() => JsonNode.Parse(await host.Program("stranger").GetStringAsync("openapi.json", Cancellation))!.AsObject();
}
