using Laydown.Measures;

namespace Laydown.Layout.Panels;

/// <summary>Parts graphics larger than their stock in panels, exactly: no other way with seams at whole millimetres is better.</summary>
/// <remarks>
/// Better is, in this order: fewer panels, less length of stock, cheaper seams (places kept out, places wanted), widths more alike. A grid is the
/// best of both axes apart, as its seams run through. Bricks: the columns first, then the rows of each column from the left, each the best that keeps
/// clear of the seams of the column before it.
/// </remarks>
public static class Panelling
{
    /// <summary>The best plan, or why there is none.</summary>
    /// <returns>A plan; one panel where the graphic fits and no widths were given. Else a fault that names what stands in the way.</returns>
    public static Reading<PanelPlan> Solve(PanelRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (PanelFaults.Of(request) is { } fault)
            return Reading.Refused<PanelPlan>(fault);
        PanelCandidate? best = null;
        request = request with { Most = LessSeams(request) };
        foreach (bool turned in (ReadOnlySpan<bool>)[false, true])
        {
            if (turned && !request.MayTurn)
                continue;
            foreach (PanelPattern pattern in Patterns(request.Wish.Pattern))
            {
                if (Candidate(request, pattern, turned) is { } candidate && candidate.IsBetterThan(best))
                    best = candidate;
            }
        }

        return best is null ? Reading.Refused<PanelPlan>(PanelFaults.NoPlan(request)) : Reading.Of(Plan(request, best));
    }

    // What is printed beyond seams takes room on the stock: reckoned on both sides, also of the outermost, so that no panel is too long. A graphic that fits has no seam.
    private static SizeMm LessSeams(PanelRequest request)
    {
        double both = 2 * request.Wish.SeamBleedMm;
        bool fits = request.Graphic.FitsIn(request.Most) || (request.MayTurn && request.Graphic.Turned().FitsIn(request.Most));
        return fits && request.Wish.Widths != PanelWidths.Given ? request.Most : new(Math.Max(0, request.Most.WidthMm - both), Math.Max(0, request.Most.HeightMm - both));
    }

    private static IReadOnlyList<PanelPattern> Patterns(PanelPattern wanted) =>
        wanted == PanelPattern.Fewest ? [PanelPattern.Columns, PanelPattern.Rows, PanelPattern.Grid] : [wanted];

    private static PanelCandidate? Candidate(PanelRequest request, PanelPattern pattern, bool turned)
    {
        SizeMm most = turned ? request.Most.Turned() : request.Most;
        (double width, double height) = (request.Graphic.WidthMm, request.Graphic.HeightMm);
        bool byRows = pattern == PanelPattern.Rows;
        PanelAxis level = new(request, upright: true, most.WidthMm, given: !byRows), up = new(request, upright: false, most.HeightMm, given: byRows);
        AxisAnswer? columns = byRows ? Whole(width, most.WidthMm) : level.Solve((0, height), []);
        if (columns is null)
            return null;
        if (pattern == PanelPattern.Brick)
            return Bricks(request, level, up, columns, turned);
        AxisAnswer? rows = pattern == PanelPattern.Columns ? Whole(height, most.HeightMm) : up.Solve((0, width), []);
        if (rows is null)
            return null;
        return new(turned, [.. Enumerable.Range(0, columns.Count).Select(c => Column(level.Of(columns, c), up, rows))],
            columns.Cost + rows.Cost, columns.Spread + rows.Spread);
    }

    private static PanelCandidate? Bricks(PanelRequest request, PanelAxis level, PanelAxis up, AxisAnswer columns, bool turned)
    {
        List<IReadOnlyList<RectMm>> parts = [];
        int stagger = (int)Math.Ceiling(request.Wish.StaggerMm);
        (long cost, long spread) = (columns.Cost, columns.Spread);
        IReadOnlyList<(int From, int To)> before = [];
        for (int c = 0; c < columns.Count; c++)
        {
            (double From, double To) across = level.Of(columns, c);
            if (up.Solve(across, before) is not { } rows)
                return null;
            parts.Add(Column(across, up, rows));
            (cost, spread) = (cost + rows.Cost, spread + rows.Spread);
            before = [.. Enumerable.Range(1, rows.Count - 1).Select(r => (
                Math.Min(rows.Starts[r], rows.Ends[r - 1]) - stagger, Math.Max(rows.Starts[r], rows.Ends[r - 1]) + stagger))];
        }

        return new(turned, parts, cost, spread);
    }

    private static IReadOnlyList<RectMm> Column((double From, double To) across, PanelAxis up, AxisAnswer rows) =>
        [.. Enumerable.Range(0, rows.Count).Select(r => up.Of(rows, r)).Select(y => new RectMm(across.From, y.From, across.To - across.From, y.To - y.From))];

    private static AxisAnswer? Whole(double lengthMm, double mostMm) =>
        lengthMm <= mostMm + 1e-6 ? new([0], [(int)Math.Ceiling(lengthMm - 1e-6)], 0, 0) : null;

    // Hung from one side to the other, each column from the bottom up: the upper lies over the lower, so that water runs off.
    private static PanelPlan Plan(PanelRequest request, PanelCandidate best)
    {
        IEnumerable<IReadOnlyList<RectMm>> columns = request.Wish.FromRight ? best.Parts.Reverse() : best.Parts;
        return PanelPlan.Of(request.Graphic, best.Turned, [.. columns.SelectMany(c => c)]) with { SeamCost = best.Cost, SeamBleedMm = request.Wish.SeamBleedMm };
    }
}
