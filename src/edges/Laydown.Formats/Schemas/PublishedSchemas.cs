using System.Collections.Concurrent;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using Json.Schema;
using Laydown.Formats.Json;

namespace Laydown.Formats.Schemas;

/// <summary>The JSON Schemas (2020-12) of the product's files, as they lie in the folder <c>schemas</c> of the project.</summary>
public static class PublishedSchemas
{
    private static readonly ConcurrentDictionary<string, JsonSchema> Compilations = new(StringComparer.Ordinal);

    /// <summary>Kinds with a schema, such as <c>press</c>; the file is <c>press.schema.json</c>.</summary>
    public static IReadOnlyList<string> Kinds { get; } = [.. JsonKinds.Types.Keys];

    /// <summary>The published text of a kind's schema.</summary>
    /// <exception cref="ArgumentException">There is no such kind.</exception>
    public static string Text(string kind)
    {
        using Stream stream = typeof(PublishedSchemas).Assembly.GetManifestResourceStream(Invariant($"{kind}.schema.json"))
            ?? throw new ArgumentException(Invariant($"{kind} has no schema; wanted one of {string.Join(", ", Kinds)}."), nameof(kind));
        using StreamReader reader = new(stream);
        return reader.ReadToEnd();
    }

    /// <summary>The schema as it follows from the record itself and the ranges of its fields; the published text is kept equal to it.</summary>
    /// <exception cref="ArgumentException">There is no such kind.</exception>
    public static string Derived(string kind)
    {
        if (!JsonKinds.Types.TryGetValue(kind, out Type? type))
            throw new ArgumentException(Invariant($"{kind} has no schema; wanted one of {string.Join(", ", Kinds)}."), nameof(kind));

        JsonObject body = LaydownJson.Options.GetJsonSchemaAsNode(
            type, new JsonSchemaExporterOptions { TreatNullObliviousAsNonNullable = true, TransformSchemaNode = SchemaRules.Apply }).AsObject();
        JsonObject properties = new()
        {
            ["schema"] = new JsonObject { ["const"] = JsonKinds.Name(kind) },
            ["version"] = new JsonObject { ["const"] = JsonKinds.Version },
        };
        foreach ((string name, JsonNode? node) in body["properties"]!.AsObject())
            properties[name] = node?.DeepClone();
        JsonObject root = new()
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["$id"] = Invariant($"urn:laydown:{kind}:{JsonKinds.Version}"),
            ["title"] = Invariant($"Laydown {kind}, version {JsonKinds.Version}"),
            ["type"] = "object",
            ["properties"] = properties,
            ["required"] = new JsonArray(["schema", "version", .. body["required"]!.AsArray().Select(n => n!.DeepClone())]),
            ["additionalProperties"] = false,
        };
        return root.ToJsonString(LaydownJson.Options) + "\n";
    }

    /// <summary>The published schema, ready to check with.</summary>
    internal static JsonSchema Compiled(string kind) => Compilations.GetOrAdd(kind, k => JsonSchema.FromText(Text(k)));
}
