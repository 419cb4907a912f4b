using System.Text.Json.Nodes;
using Json.Schema;
using Laydown.Formats.Schemas;
using Xunit;

namespace Laydown.Edges.Tests.Orders;

public sealed class PublishedSchemaLawTests
{
    public static TheoryData<string> Kinds() => [.. PublishedSchemas.Kinds];

    /// <summary>LAYDOWN_WRITE_SCHEMAS=1 writes the folder anew after a record was changed on purpose.</summary>
    [Theory, MemberData(nameof(Kinds))]
    public void Published_embedded_and_derived_schema_are_the_same(string kind)
    {
        string path = Path.Combine(Checkout.Root, "schemas", $"{kind}.schema.json");
        string derived = PublishedSchemas.Derived(kind);
        if (Environment.GetEnvironmentVariable("LAYDOWN_WRITE_SCHEMAS") == "1")
            File.WriteAllText(path, derived);

        Assert.Equal(derived, File.ReadAllText(path));
        Assert.Equal(derived, PublishedSchemas.Text(kind));
    }

    [Theory, MemberData(nameof(Kinds))]
    public void Every_schema_is_valid_by_the_meta_schema_of_2020_12(string kind)
    {
        EvaluationResults results = MetaSchemas.Draft202012.Evaluate(JsonNode.Parse(PublishedSchemas.Text(kind)));
        Assert.True(results.IsValid);
    }

    [Theory, MemberData(nameof(Kinds))]
    public void No_text_and_no_list_is_without_end(string kind)
    {
        List<string> open = [];
        Walk(JsonNode.Parse(PublishedSchemas.Text(kind))!, "", open);
        Assert.Empty(open);
    }

    private static void Walk(JsonNode node, string path, List<string> open)
    {
        if (node is JsonObject rule)
        {
            string? type = rule["type"] is JsonArray several ? (string?)several.First(t => (string)t! != "null") : rule["type"] is JsonValue v ? (string?)v : null;
            if (type == "string" && !rule.ContainsKey("maxLength") && !rule.ContainsKey("format") && !rule.ContainsKey("enum"))
                open.Add(path);
            if (type == "array" && !rule.ContainsKey("maxItems"))
                open.Add(path);
            foreach ((string name, JsonNode? child) in rule)
            {
                if (child is not null)
                    Walk(child, $"{path}/{name}", open);
            }
        }
    }

    [Fact]
    public void There_are_as_many_files_as_kinds() =>
        Assert.Equal(
            PublishedSchemas.Kinds.Order(StringComparer.Ordinal),
            Directory.GetFiles(Path.Combine(Checkout.Root, "schemas"), "*.schema.json").Select(f => Path.GetFileName(f).Replace(".schema.json", "", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
}
