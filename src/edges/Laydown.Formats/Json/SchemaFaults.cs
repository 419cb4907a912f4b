using System.Text.Json.Nodes;
using Json.Pointer;
using Json.Schema;
using Laydown.Formats.Schemas;
using Laydown.Measures;

namespace Laydown.Formats.Json;

/// <summary>Checks JSON against the published schema of its kind and says in words what was found and what was wanted.</summary>
internal static class SchemaFaults
{
    private const int MostFaults = 50;

    /// <summary>The root object when the schema accepts it, or its faults.</summary>
    public static Reading<JsonObject> Check(string fileName, string kind, JsonNode? root)
    {
        string name = JsonKinds.Name(kind);
        if (root is not JsonObject fields)
            return Reading.Refused<JsonObject>(new InputFault(fileName, null, "/", Short(root), Invariant($"an object with \"schema\": \"{name}\"")));

        // A file of another kind or version gets one fault, not one for each field.
        if (fields["schema"]?.ToJsonString() != Invariant($"\"{name}\""))
            return Reading.Refused<JsonObject>(new InputFault(fileName, null, "/schema", Short(fields["schema"]), Invariant($"\"{name}\"")));
        if (fields["version"]?.ToJsonString() != "1")
            return Reading.Refused<JsonObject>(new InputFault(fileName, null, "/version", Short(fields["version"]), "1"));

        EvaluationOptions options = new() { OutputFormat = OutputFormat.List, RequireFormatValidation = true };
        EvaluationResults results = PublishedSchemas.Compiled(kind).Evaluate(root, options);
        return results.IsValid ? Reading.Of(fields) : Reading.Refused<JsonObject>(Faults(fileName, kind, root, results));
    }

    private static List<InputFault> Faults(string fileName, string kind, JsonNode root, EvaluationResults results)
    {
        JsonNode schema = JsonNode.Parse(PublishedSchemas.Text(kind))!;
        List<InputFault> faults = [];
        foreach (EvaluationResults one in results.Details.Prepend(results).Where(r => r.HasErrors))
        {
            JsonNode? rule = Rule(schema, one.EvaluationPath);
            JsonNode? value = At(root, one.InstanceLocation);
            foreach (string keyword in one.Errors!.Keys)
                faults.AddRange(Words(fileName, one.InstanceLocation.ToString(), keyword, rule, value));
        }

        // One fault for each place is enough; a wrong type would also break every other rule.
        return faults.Count == 0
            ? [new InputFault(fileName, null, "/", "JSON the schema refuses", Invariant($"JSON as in {kind}.schema.json"))]
            : [.. faults.DistinctBy(f => f.Field).OrderBy(f => f.Field, StringComparer.Ordinal).Take(MostFaults)];
    }

    private static IEnumerable<InputFault> Words(string file, string path, string keyword, JsonNode? rule, JsonNode? value) => keyword switch
    {
        "required" => rule!["required"]!.AsArray().Select(n => (string)n!).Where(n => !value!.AsObject().ContainsKey(n))
            .Select(n => new InputFault(file, null, path + "/" + n, "nothing", Wanted(rule["properties"]?[n]))),
        "" => [new InputFault(file, null, path, Short(value), "no such field")],
        "format" => [new InputFault(file, null, path, Short(value), (string?)rule?["format"] switch
        {
            "date-time" => "an instant such as 2026-12-01T08:00:00+00:00",
            "time" => "a time of day such as 08:00:00",
            _ => "a day such as 2026-12-01",
        })],
        _ => [new InputFault(file, null, path.Length == 0 ? "/" : path, Short(value), Wanted(rule))],
    };

    /// <summary>What a schema node takes, in words.</summary>
    private static string Wanted(JsonNode? rule)
    {
        if (rule is not JsonObject r)
            return "another value";
        if (r["const"] is { } only)
            return only.ToJsonString();
        if (r["enum"] is JsonArray words)
            return "one of " + string.Join(", ", words.Select(w => w is null ? "null" : w.ToString()));
        if (r["description"] is { } told)
            return told.ToString();

        List<string> parts = [TypeWords(r["type"])];
        if (r["exclusiveMinimum"] is { } over)
            parts.Add(Invariant($"over {over}"));
        if (r["minimum"] is { } least)
            parts.Add(Invariant($"at least {least}"));
        if (r["maximum"] is { } most)
            parts.Add(Invariant($"at most {most}"));
        if (r["exclusiveMaximum"] is { } under)
            parts.Add(Invariant($"under {under}"));
        if (r["minItems"] is { } fewest)
            parts.Add(Invariant($"with at least {fewest} entries"));
        if (r["maxItems"] is { } mostItems)
            parts.Add(Invariant($"with at most {mostItems} entries"));
        if (r["minLength"] is { } shortest)
            parts.Add(Invariant($"of {shortest} to {r["maxLength"]} characters"));
        return string.Join(" ", parts);
    }

    private static string TypeWords(JsonNode? type) => type switch
    {
        JsonArray several => string.Join(" or ", several.Select(TypeWords)),
        null => "a value",
        _ => type.ToString() switch
        {
            "integer" => "a whole number",
            "array" => "a list",
            "object" => "an object",
            "boolean" => "true or false",
            "string" => "a text",
            "null" => "null",
            _ => "a number",
        },
    };

    private static string Short(JsonNode? value)
    {
        string text = value switch { null => "nothing", JsonArray { Count: 0 } => "an empty list", _ => value.ToJsonString(LaydownJson.Options) };
        text = string.Join(' ', text.Split(['\r', '\n', '\t', ' '], StringSplitOptions.RemoveEmptyEntries));
        return text.Length <= 60 ? text : text[..60] + "…";
    }

    /// <summary>The rule that was broken; on its way a type met before is only referred to.</summary>
    private static JsonNode? Rule(JsonNode schema, JsonPointer path)
    {
        JsonNode? rule = schema;
        foreach (string step in path.ToString().Split('/').Skip(1))
        {
            rule = step == "$ref" && rule?["$ref"] is { } elsewhere
                ? At(schema, JsonPointer.Parse(elsewhere.ToString().TrimStart('#')))
                : rule is null ? null : At(rule, JsonPointer.Parse("/" + step));
        }

        return rule;
    }

    private static JsonNode? At(JsonNode root, JsonPointer pointer) => pointer.TryEvaluate(root, out JsonNode? found) ? found : null;
}
