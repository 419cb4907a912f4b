using Laydown.Geometry.Outlines;
using Laydown.Measures;

namespace Laydown.Formats.Dxf;

/// <summary>Gathers entities and makes lines of them.</summary>
/// <param name="limits">How much is taken.</param>
/// <param name="toleranceMm">How far flattened curves may lie off, mm.</param>
internal sealed class DxfLines(DxfLimits limits, double toleranceMm)
{
    // Entities that draw nothing to cut along, or only hold others together.
    private static readonly string[] Silent = ["VERTEX", "SEQEND", "VIEWPORT"];

    private readonly List<DxfEntity> entities = [];
    private readonly SortedDictionary<string, int> leftOut = new(StringComparer.Ordinal);
    private long pairs;
    private int counted;

    /// <summary>What was left out.</summary>
    internal IEnumerable<Finding> Findings => leftOut.Select(l => new Finding(
        "dxf-left-out", Severity.Warn, null, null, Invariant($"{l.Key} is no line that can be cut along."), Invariant($"{l.Value} of them"),
        "LINE, LWPOLYLINE, POLYLINE, ARC, CIRCLE, ELLIPSE, SPLINE", "left out", "Dxf2000"));

    internal void Take(DxfPair pair)
    {
        if (pair.Code == 0)
        {
            if (entities.Count >= limits.MostPoints || (pair.Text is not ("VERTEX" or "SEQEND") && ++counted > limits.MostEntities))
                throw new DxfFaultException(Invariant($"line {pair.Line}"), Invariant($"more than {limits.MostEntities} entities"), Invariant($"at most {limits.MostEntities}"));
            entities.Add(new(pair.Text.ToUpperInvariant(), pair.Line));
        }
        else if (entities.Count > 0)
        {
            entities[^1].Add(pair);
        }

        if (++pairs > 40L * limits.MostPoints)
            throw new DxfFaultException(Invariant($"line {pair.Line}"), "more groups than can be worked through", Invariant($"at most {limits.MostPoints} corners"));
    }

    /// <summary>Tells the kinds that are left out.</summary>
    internal void End()
    {
        foreach (DxfEntity entity in entities)
            if (!IsLine(entity.Kind) && !Silent.Contains(entity.Kind))
                leftOut[entity.Kind] = leftOut.GetValueOrDefault(entity.Kind) + 1;
    }

    /// <summary>The lines, mm.</summary>
    /// <param name="mm">Millimetres in a unit of the drawing.</param>
    internal IReadOnlyList<RawContour> Contours(double mm)
    {
        List<RawContour> contours = [];
        DxfCurves curves = new(mm, toleranceMm);
        long points = 0;
        for (int i = 0; i < entities.Count; i++)
        {
            if (!IsLine(entities[i].Kind))
                continue;
            RawContour contour = entities[i].Kind == "POLYLINE" ? curves.Polyline(entities[i], Vertices(i)) : curves.Of(entities[i]);
            points += contour.Points.Count;
            if (points > limits.MostPoints)
                throw new DxfFaultException(entities[i].Field, Invariant($"more than {limits.MostPoints} corners"), Invariant($"at most {limits.MostPoints}"));
            contours.Add(contour);
        }

        return contours;
    }

    private static bool IsLine(string kind) => kind is "LINE" or "LWPOLYLINE" or "POLYLINE" or "ARC" or "CIRCLE" or "ELLIPSE" or "SPLINE";

    private IReadOnlyList<DxfEntity> Vertices(int polyline) => [.. entities.Skip(polyline + 1).TakeWhile(e => e.Kind == "VERTEX")];
}
