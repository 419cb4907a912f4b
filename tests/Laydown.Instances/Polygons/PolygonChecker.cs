using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;
using NetTopologySuite.Index.Strtree;
using NetTopologySuite.Operation.Buffer;

namespace Laydown.Instances.Polygons;

/// <summary>Judges layouts of shapes on its own, at full resolution, with a geometry library and nothing of the code that made them.</summary>
public static class PolygonChecker
{
    /// <summary>What is wrong with a layout, in words; empty where nothing is.</summary>
    public static IReadOnlyList<string> Faults(PolygonInstance instance, IReadOnlyList<PlacedPolygon> placed, PolygonAsk ask)
    {
        ArgumentNullException.ThrowIfNull(instance);
        ArgumentNullException.ThrowIfNull(placed);
        ArgumentNullException.ThrowIfNull(ask);
        return
        [
            .. placed.GroupBy(p => p.Board).OrderBy(g => g.Key).SelectMany(g => OfBoard(instance, [.. g], g.Key, ask).Select(f => FormattableString.Invariant($"board {g.Key + 1}: {f}"))),
            .. Counts(instance, placed),
            .. placed.Where(p => !MayLie(instance.Items[p.Item], p.Degrees)).Select(p => FormattableString.Invariant($"item {p.Item} is turned by {p.Degrees} degrees, which is not allowed")),
        ];
    }

    /// <summary>A shape as it lies.</summary>
    public static Polygon Lying(PolygonInstance instance, PlacedPolygon placed)
    {
        ArgumentNullException.ThrowIfNull(instance);
        ArgumentNullException.ThrowIfNull(placed);
        (double sin, double cos) = (placed.Degrees % 360) switch { 0 => (0, 1), 90 => (1, 0), 180 => (0, -1), 270 => (-1, 0), double d => Math.SinCos(d * Math.PI / 180) };
        AffineTransformation way = new(cos, -sin, placed.X, sin, cos, placed.Y);
        return (Polygon)way.Transform(instance.Items[placed.Item].Shape);
    }

    private static IEnumerable<string> OfBoard(PolygonInstance instance, IReadOnlyList<PlacedPolygon> placed, int board, PolygonAsk ask)
    {
        Polygon[] shapes = [.. placed.Select(p => Lying(instance, p))];
        Geometry inside = ask.Boards[board].Buffer(ask.Slack, new BufferParameters(4, EndCapStyle.Square, JoinStyle.Mitre, 5)), edges = ask.Boards[board].Boundary;
        STRtree<int> tree = new();
        for (int i = 0; i < shapes.Length; i++)
            tree.Insert(shapes[i].EnvelopeInternal, i);

        for (int i = 0; i < shapes.Length; i++)
        {
            if (!inside.Covers(shapes[i]) || edges.Distance(shapes[i]) < ask.Margin - ask.Slack)
                yield return FormattableString.Invariant($"item {placed[i].Item} at {shapes[i].EnvelopeInternal} leaves the board or its margin");
            foreach (Polygon keepOut in ask.KeepOuts?[board] ?? [])
            {
                if (TooClose(shapes[i], keepOut, ask))
                    yield return FormattableString.Invariant($"item {placed[i].Item} lies on a keep-out or too close to it");
            }

            Envelope around = shapes[i].EnvelopeInternal.Copy();
            around.ExpandBy(ask.Gap);
            foreach (int j in tree.Query(around).Where(j => j > i && TooClose(shapes[i], shapes[j], ask)).Order())
                yield return FormattableString.Invariant($"items {placed[i].Item} and {placed[j].Item} overlap or lie closer than {ask.Gap}");
        }
    }

    // Shapes may touch where no gap is wanted: one of them is shrunk by the slack.
    private static bool TooClose(Polygon a, Polygon b, PolygonAsk ask) => ask.Gap > ask.Slack
        ? a.Distance(b) < ask.Gap - ask.Slack
        : a.Buffer(-ask.Slack, new BufferParameters(4, EndCapStyle.Square, JoinStyle.Mitre, 5)).Intersects(b);

    private static IEnumerable<string> Counts(PolygonInstance instance, IReadOnlyList<PlacedPolygon> placed)
    {
        for (int i = 0; i < instance.Items.Count; i++)
        {
            int count = placed.Count(p => p.Item == i);
            if (count != instance.Items[i].Copies)
                yield return FormattableString.Invariant($"item {i}: wanted {instance.Items[i].Copies}, placed {count}");
        }
    }

    private static bool MayLie(PolygonItem item, double degrees) =>
        item.Degrees is null || item.Degrees.Any(d => Math.Abs(((((degrees - d) % 360) + 540) % 360) - 180) < 1e-9);
}
