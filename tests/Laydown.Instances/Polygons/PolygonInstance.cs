using System.Globalization;
using System.Text.Json;
using NetTopologySuite.Geometries;

namespace Laydown.Instances.Polygons;

/// <summary>A published instance of shapes: on a strip of fixed width (JSON), or on equal boards (a text of numbers).</summary>
/// <param name="Name">Name of the file without its end.</param>
/// <param name="Width">Width across the strip, or of a board.</param>
/// <param name="Height">Height of a board; 0 for a strip.</param>
/// <param name="Items">Wanted shapes.</param>
public sealed record PolygonInstance(string Name, double Width, double Height, IReadOnlyList<PolygonItem> Items)
{
    /// <summary>Area of all wanted copies.</summary>
    public double ItemArea => Items.Sum(i => i.Shape.Area * i.Copies);

    /// <summary>Reads a strip: <c>strip_height</c> and <c>items</c> with <c>demand</c>, <c>allowed_orientations</c> in degrees (absent: any) and a simple polygon.</summary>
    /// <exception cref="InvalidDataException">A shape is not a simple polygon; the message names file, item, found and wanted.</exception>
    public static PolygonInstance ReadStrip(string path)
    {
        using var document = JsonDocument.Parse(File.ReadAllBytes(path));
        string name = Path.GetFileNameWithoutExtension(path);
        IReadOnlyList<PolygonItem> items = [.. document.RootElement.GetProperty("items").EnumerateArray().Select(i => Item(path, i))];
        return new(name, document.RootElement.GetProperty("strip_height").GetDouble(), 0, items);
    }

    /// <summary>Reads boards: the number of pieces, width and height of a board, then for each piece its number of corners and their x and y.</summary>
    /// <exception cref="InvalidDataException">A number is missing or is none; the message names file, place, found and wanted.</exception>
    public static PolygonInstance ReadBoards(string path)
    {
        string[] words = File.ReadAllText(path).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        int at = 0;
        double Number() => at < words.Length && double.TryParse(words[at], NumberStyles.Float, CultureInfo.InvariantCulture, out double number)
            ? (at++, number).number
            : throw new InvalidDataException(FormattableString.Invariant($"{path}, number {at + 1}: found {(at < words.Length ? words[at] : "the end")}; wanted a number."));
        int count = (int)Number();
        (double width, double height) = (Number(), Number());
        List<PolygonItem> items = [];
        for (int i = 0; i < count; i++)
        {
            int corners = (int)Number();
            List<Coordinate> ring = [];
            for (int c = 0; c < corners; c++)
                ring.Add(new(Number(), Number()));
            items.Add(new(Closed(ring), 1, [0, 90, 180, 270]));
        }

        return new(Path.GetFileNameWithoutExtension(path), width, height, items);
    }

    private static PolygonItem Item(string path, JsonElement item)
    {
        JsonElement shape = item.GetProperty("shape");
        if (shape.GetProperty("type").GetString() != "simple_polygon")
            throw new InvalidDataException($"{path}, item {item.GetProperty("id")}: found {shape.GetProperty("type")}; wanted simple_polygon.");
        List<Coordinate> ring = [.. shape.GetProperty("data").EnumerateArray().Select(p => new Coordinate(p[0].GetDouble(), p[1].GetDouble()))];
        bool set = item.TryGetProperty("allowed_orientations", out JsonElement angles) && angles.ValueKind == JsonValueKind.Array;
        return new(Closed(ring), item.GetProperty("demand").GetInt32(), set ? [.. angles.EnumerateArray().Select(a => a.GetDouble())] : null);
    }

    private static Polygon Closed(List<Coordinate> ring)
    {
        if (!ring[0].Equals2D(ring[^1]))
            ring.Add(ring[0].Copy());
        return new GeometryFactory().CreatePolygon([.. ring]);
    }
}
