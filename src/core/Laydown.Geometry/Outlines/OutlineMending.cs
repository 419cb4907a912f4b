using Laydown.Geometry.Shapes;
using Laydown.Measures;

namespace Laydown.Geometry.Outlines;

/// <summary>Makes sound shapes of the lines of a file: repaired with a finding, or refused by name; never taken as they should not be.</summary>
public static class OutlineMending
{
    /// <summary>Shapes of lines of which nothing is known: rings within rings are holes, rings within holes are shapes again.</summary>
    /// <param name="file">Name of the file, for faults.</param>
    /// <param name="contours">Its lines, mm.</param>
    /// <param name="rules">What is mended.</param>
    /// <returns>At least one shape, or why there is none: far too large, open, crossing itself or another, without area.</returns>
    public static Reading<MendedOutlines> Nested(string file, IReadOnlyList<RawContour> contours, OutlineRules rules)
    {
        ArgumentNullException.ThrowIfNull(contours);
        ArgumentNullException.ThrowIfNull(rules);
        OutlineNotes notes = new(file);
        IReadOnlyList<MendedRing> rings = Rings(contours, rules, notes);
        IReadOnlyList<MendedShape> shapes = notes.Faults.Count > 0 ? [] : RingNesting.Shapes(rings, notes);
        return Done(file, shapes, notes);
    }

    /// <summary>The shape of an outer ring and holes that are told apart.</summary>
    /// <param name="file">Name of the file, for faults.</param>
    /// <param name="outer">The outer ring.</param>
    /// <param name="holes">Its holes; one that lies outside is left out with a finding, one that crosses the outer ring is refused.</param>
    /// <param name="rules">What is mended.</param>
    public static Reading<MendedOutlines> WithHoles(string file, RawContour outer, IReadOnlyList<RawContour> holes, OutlineRules rules)
    {
        ArgumentNullException.ThrowIfNull(outer);
        ArgumentNullException.ThrowIfNull(holes);
        ArgumentNullException.ThrowIfNull(rules);
        OutlineNotes notes = new(file);
        IReadOnlyList<MendedRing> rings = Rings([outer, .. holes], rules, notes);
        if (notes.Faults.Count > 0)
            return Reading.Refused<MendedOutlines>(notes.Faults);
        Shape? shape = RingNesting.Pierced(rings[0], [.. rings.Skip(1)], notes);
        return Done(file, shape is null ? [] : [new(rings[0].Field, shape)], notes);
    }

    private static Reading<MendedOutlines> Done(string file, IReadOnlyList<MendedShape> shapes, OutlineNotes notes) =>
        notes.Faults.Count > 0 ? Reading.Refused<MendedOutlines>(notes.Faults)
        : shapes.Count > 0 ? Reading.Of(new MendedOutlines(shapes, notes.Findings))
        : Reading.Refused<MendedOutlines>(new InputFault(file, null, "contours", "no closed line", "at least one ring that holds some area"));

    private static IReadOnlyList<MendedRing> Rings(IReadOnlyList<RawContour> contours, OutlineRules rules, OutlineNotes notes)
    {
        if (!IsBearable(contours, rules, notes))
            return [];
        List<MendedRing> rings = [];
        foreach (RawContour closed in OpenEnds.Join(Near(contours, notes), rules.JoinMm, notes))
            if (RingMending.Mend(closed, rules, notes) is { } ring)
                rings.Add(new(closed.Field, ring));
        return rings;
    }

    // Counts, numbers and extent, before anything is computed from them.
    private static bool IsBearable(IReadOnlyList<RawContour> contours, OutlineRules rules, OutlineNotes notes)
    {
        long points = contours.Sum(c => (long)c.Points.Count);
        if (contours.Count > rules.MostContours || points > rules.MostPoints)
            notes.Refuse("contours", Invariant($"{contours.Count} lines of {points} corners"), Invariant($"at most {rules.MostContours} of {rules.MostPoints}"));
        foreach (RawContour bad in contours.Where(c => c.Points.Any(p => !double.IsFinite(p.XMm) || !double.IsFinite(p.YMm))))
            notes.Refuse(bad.Field, "a coordinate that is no number", "numbers of mm");
        if (notes.Faults.Count > 0 || points == 0)
            return notes.Faults.Count == 0;

        RectMm box = Box(contours);
        if (box.WidthMm <= rules.MostMm && box.HeightMm <= rules.MostMm)
            return true;
        notes.Refuse(
            "extent", Invariant($"lines over {box.WidthMm:0.#} × {box.HeightMm:0.#} mm"),
            Invariant($"at most {rules.MostMm:0.#} mm each way: the unit of the file may be another"));
        return false;
    }

    // Drawn a long way from the origin, fine differences drown in large numbers: the whole drawing is brought near.
    private static IReadOnlyList<RawContour> Near(IReadOnlyList<RawContour> contours, OutlineNotes notes)
    {
        const double Far = 1e6;
        RectMm box = contours.Any(c => c.Points.Count > 0) ? Box(contours) : default;
        if (Math.Max(Math.Max(Math.Abs(box.XMm), Math.Abs(box.YMm)), Math.Max(Math.Abs(box.RightMm), Math.Abs(box.TopMm))) <= Far)
            return contours;
        notes.Mended(
            "outline-far-away", Severity.Note, new(box.XMm, box.YMm), "The drawing lies a long way from its origin.",
            Invariant($"{box.XMm:0.#}, {box.YMm:0.#} mm"), Invariant($"within {Far:0} mm"), "moved so that its lower left corner is the origin");
        return [.. contours.Select(c => c with { Points = [.. c.Points.Select(p => new PointMm(p.XMm - box.XMm, p.YMm - box.YMm))] })];
    }

    private static RectMm Box(IReadOnlyList<RawContour> contours)
    {
        double left = double.MaxValue, low = double.MaxValue, right = double.MinValue, top = double.MinValue;
        foreach (PointMm p in contours.SelectMany(c => c.Points))
        {
            (left, right) = (Math.Min(left, p.XMm), Math.Max(right, p.XMm));
            (low, top) = (Math.Min(low, p.YMm), Math.Max(top, p.YMm));
        }

        return new(left, low, right - left, top - low);
    }
}
