using System.Text;
using System.Text.Json;
using Laydown.Measures;

namespace Laydown.Formats.Json;

/// <summary>Goes once over the tokens of a JSON file, before anything is built from it, and names the place of the first that cannot be taken.</summary>
internal static class JsonTokens
{
    private const int MaxTextBytes = 20_000;

    /// <summary>The same bytes, when they are well-formed JSON within our limits; else one fault with its JSON path.</summary>
    public static Reading<byte[]> Check(string fileName, byte[] bytes)
    {
        if (bytes.Length == 0)
            return Reading.Refused<byte[]>(new InputFault(fileName, null, "file", "0 bytes", "a JSON object"));

        Stack<Level> levels = new();
        ReadOnlySpan<byte> text = bytes.AsSpan().StartsWith("\uFEFF"u8) ? bytes.AsSpan(3) : bytes;
        Utf8JsonReader reader = new(text, new JsonReaderOptions { MaxDepth = LaydownJson.MaxDepth });
        try
        {
            while (reader.Read())
            {
                if (Step(levels, ref reader) is { } flaw)
                    return Reading.Refused<byte[]>(new InputFault(fileName, null, PathOf(levels), flaw.Found, flaw.Wanted));
            }
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            string place = e is JsonException j ? Invariant($"line {j.LineNumber + 1}, byte {j.BytePositionInLine + 1}") : "broken text";
            string found = levels.Count >= LaydownJson.MaxDepth
                ? Invariant($"more than {LaydownJson.MaxDepth} levels")
                : Invariant($"no JSON at {place}");
            return Reading.Refused<byte[]>(
                new InputFault(fileName, null, PathOf(levels), found, Invariant($"well-formed JSON of at most {LaydownJson.MaxDepth} levels")));
        }

        return Reading.Of(text.ToArray());
    }

    private static (string Found, string Wanted)? Step(Stack<Level> levels, ref Utf8JsonReader reader)
    {
        switch (reader.TokenType)
        {
            case JsonTokenType.PropertyName:
                string name = reader.GetString()!;
                levels.Peek().Name = name;
                return levels.Peek().Names!.Add(name) ? null : ("the field twice", "each field once");
            case JsonTokenType.EndObject or JsonTokenType.EndArray:
                levels.Pop();
                return null;
            case JsonTokenType.Comment:
                return null;
        }

        // Every other token starts a value: in a list it moves the place on by one.
        if (levels.TryPeek(out Level? level) && level.Names is null)
            level.Index++;
        switch (reader.TokenType)
        {
            case JsonTokenType.StartObject:
                levels.Push(new Level([]));
                return null;
            case JsonTokenType.StartArray:
                levels.Push(new Level(null));
                return null;
            case JsonTokenType.Number when !reader.TryGetDecimal(out _) || !double.IsFinite(reader.GetDouble()):
                return (Encoding.UTF8.GetString(reader.ValueSpan[..Math.Min(40, reader.ValueSpan.Length)]), "a number of usual size");
            case JsonTokenType.String when reader.ValueSpan.Length > MaxTextBytes:
                return (Invariant($"a text of {reader.ValueSpan.Length} bytes"), Invariant($"at most {MaxTextBytes} bytes"));
            case JsonTokenType.String:
                // Text that is not UTF-8, or half a surrogate pair, throws here and not later.
                reader.GetString();
                return null;
            default:
                return null;
        }
    }

    private static string PathOf(Stack<Level> levels)
    {
        string path = string.Concat(levels.Reverse().Where(l => l.Name is not null || l.Index >= 0)
            .Select(l => l.Names is null ? Invariant($"/{l.Index}") : "/" + l.Name));
        return path.Length == 0 ? "/" : path.Length > 200 ? path[..200] + "…" : path;
    }

    private sealed class Level(HashSet<string>? names)
    {
        /// <summary>Names seen in an object; null for a list.</summary>
        public HashSet<string>? Names { get; } = names;

        public string? Name { get; set; }

        public int Index { get; set; } = -1;
    }
}
