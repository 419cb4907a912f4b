using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using Laydown.Artwork.Pages;
using Laydown.Measures;

namespace Laydown.Formats.Json;

/// <summary>Reads and writes the product's records as JSON, each file with <c>"schema": "laydown/…"</c> and <c>"version": 1</c>.</summary>
/// <remarks>
/// Kinds: shop (<see cref="ShopFile"/>), calendar, upkeep, stock room, press, ink set, ink optics, stock, print condition, order, artwork, stack, run, layout job, layout. Names in camelCase with the unit at
/// their end, enums as words, money as <c>{"cents": 1234}</c>, days as <c>2026-12-01</c>, UTF-8 without mark, two blanks, line feeds.
/// What is read is checked against the published schema first; a field that the schema does not know is refused.
/// </remarks>
public static class LaydownJson
{
    /// <summary>Longest file taken, bytes: 64 MiB.</summary>
    public const int MaxBytes = 64 << 20;

    /// <summary>Deepest nesting taken.</summary>
    public const int MaxDepth = 32;

    /// <summary>The options everything of ours is written with: also for results that have no published schema.</summary>
    public static JsonSerializerOptions Options { get; } = MakeOptions();

    /// <summary>The record in a file, or every fault found, each with file and JSON path.</summary>
    /// <typeparam name="T">A kind of record that has a published schema.</typeparam>
    /// <param name="fileName">Name of the file for faults, without folder.</param>
    /// <param name="stream">Its bytes; read to the end, left open.</param>
    /// <exception cref="ArgumentException"><typeparamref name="T"/> has no published schema.</exception>
    public static Reading<T> Read<T>(string fileName, Stream stream)
    {
        string kind = JsonKinds.Of(typeof(T));
        return ReadBytes(fileName, stream)
            .Then(bytes => JsonTokens.Check(fileName, bytes))
            .Then(bytes => SchemaFaults.Check(fileName, kind, JsonNode.Parse(bytes)))
            .Then(root => ToRecord<T>(fileName, root));
    }

    /// <summary>The record in the file at <paramref name="path"/>, or its faults; a file that cannot be opened is a fault too.</summary>
    /// <exception cref="ArgumentException"><typeparamref name="T"/> has no published schema.</exception>
    public static Reading<T> ReadFile<T>(string path)
    {
        try
        {
            using FileStream stream = File.OpenRead(path);
            return Read<T>(Path.GetFileName(path), stream);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Reading.Refused<T>(new InputFault(Path.GetFileName(path), null, "file", "nothing that can be opened", "a readable JSON file"));
        }
    }

    /// <summary>Writes a record with its schema name and version.</summary>
    /// <exception cref="ArgumentException"><typeparamref name="T"/> has no published schema, or a number of the record is NaN or infinite.</exception>
    public static void Write<T>(Stream stream, T record)
        where T : notnull => WriteResult(stream, JsonKinds.Name(JsonKinds.Of(typeof(T))), JsonKinds.Version, record);

    /// <summary>The bytes that <see cref="Write{T}"/> writes.</summary>
    /// <exception cref="ArgumentException"><typeparamref name="T"/> has no published schema, or a number of the record is NaN or infinite.</exception>
    public static byte[] ToBytes<T>(T record)
        where T : notnull
    {
        using MemoryStream stream = new();
        Write(stream, record);
        return stream.ToArray();
    }

    /// <summary>Writes any result as JSON object that carries <c>schema</c> and <c>version</c> before its own fields.</summary>
    /// <param name="stream">Where to; left open.</param>
    /// <param name="schema">Name, such as <c>laydown/check-result</c>.</param>
    /// <param name="version">Version of that result's form, from 1.</param>
    /// <param name="result">A value that becomes a JSON object.</param>
    /// <exception cref="ArgumentException">The value does not become an object, or a number in it is NaN or infinite.</exception>
    public static void WriteResult<T>(Stream stream, string schema, int version, T result)
        where T : notnull
    {
        JsonObject root = new() { ["schema"] = schema, ["version"] = version };
        JsonObject fields = JsonSerializer.SerializeToNode(result, Options) as JsonObject
            ?? throw new ArgumentException(Invariant($"{typeof(T).Name}: wanted a value that becomes a JSON object."), nameof(result));
        foreach ((string name, JsonNode? value) in fields.ToList())
        {
            fields.Remove(name);
            root.Add(name, value);
        }

        using (Utf8JsonWriter writer = new(stream, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = Options.Encoder }))
            root.WriteTo(writer, Options);
        stream.WriteByte((byte)'\n');
    }

    private static JsonSerializerOptions MakeOptions()
    {
        JsonSerializerOptions options = new()
        {
            PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
            UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
            RespectNullableAnnotations = true,
            RespectRequiredConstructorParameters = true,
            MaxDepth = MaxDepth,
            WriteIndented = true,
            NewLine = "\n",
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
            TypeInfoResolver = new DefaultJsonTypeInfoResolver { Modifiers = { Adapt } },
        };
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false));
        options.MakeReadOnly();
        return options;
    }

    private static void Adapt(JsonTypeInfo type)
    {
        foreach (JsonPropertyInfo property in type.Properties)
        {
            // What may be null may be left out; people write these files.
            if (property.IsSetNullable)
                property.IsRequired = false;

            // An artwork's format version would clash with the version of the JSON file.
            if (type.Type == typeof(ArtworkFile) && property.Name == "version")
                property.Name = "formatVersion";
        }
    }

    private static Reading<byte[]> ReadBytes(string fileName, Stream stream)
    {
        using MemoryStream all = new();
        byte[] block = new byte[81920];
        for (int read = stream.Read(block); read > 0; read = stream.Read(block))
        {
            if (all.Length + read > MaxBytes)
                return Reading.Refused<byte[]>(new InputFault(fileName, null, "file", "more than 64 MiB", "a JSON file of at most 64 MiB"));
            all.Write(block, 0, read);
        }

        return Reading.Of(all.ToArray());
    }

    private static Reading<T> ToRecord<T>(string fileName, JsonObject root)
    {
        try
        {
            root.Remove("schema");
            root.Remove("version");
            return Reading.Of(root.Deserialize<T>(Options)!);
        }
        catch (Exception e) when (e is JsonException or ArgumentException)
        {
            // The schema lets nothing through that the record refuses; should the two ever differ, it is still a fault and no crash.
            string path = e is JsonException json ? "/" + json.Path?.TrimStart('$', '.').Replace('.', '/') : "/";
            return Reading.Refused<T>(new InputFault(fileName, null, path, "a value the record refuses", e.Message));
        }
    }
}
