using System.Text.Json.Nodes;
using Laydown.Formats.Json;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Press.Stacks;

namespace Laydown.Edges.Tests.Orders;

/// <summary>A small order and ways to spoil it.</summary>
internal static class SampleRecords
{
    public static Order Order() => new("TW-9", "Nobody, invented", new(2026, 11, 28), null,
    [
        new("TW-9-1", "A board", "board.pdf", 600, 400, 3, 4, "fluted-5", new(false, false, false, WhiteSource.Alpha, null, 100, 0.3, false),
            [new(FinishingKind.CutSquare, 1)], new(2026, 12, 4), 1.5, 1, null),
    ]);

    /// <summary>The order's JSON with one place changed; the path is a list of names and numbers.</summary>
    public static byte[] With(JsonNode? value, params object[] path)
    {
        JsonNode root = JsonNode.Parse(LaydownJson.ToBytes(Order()))!;
        JsonNode at = root;
        foreach (object step in path[..^1])
            at = step is int i ? at[i]! : at[(string)step]!;
        if (path[^1] is int index)
            at.AsArray()[index] = value;
        else
            at.AsObject()[(string)path[^1]] = value;
        return System.Text.Encoding.UTF8.GetBytes(root.ToJsonString());
    }

    public static byte[] Without(params object[] path)
    {
        JsonNode root = JsonNode.Parse(LaydownJson.ToBytes(Order()))!;
        JsonNode at = root;
        foreach (object step in path[..^1])
            at = step is int i ? at[i]! : at[(string)step]!;
        at.AsObject().Remove((string)path[^1]);
        return System.Text.Encoding.UTF8.GetBytes(root.ToJsonString());
    }

    public static Reading<Order> Read(byte[] bytes) => LaydownJson.Read<Order>("order.json", new MemoryStream(bytes));
}
