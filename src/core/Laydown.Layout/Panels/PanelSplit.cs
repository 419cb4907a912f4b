using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Panels;

/// <summary>Parts a graphic that is wider than its stock into panels of equal width.</summary>
public static class PanelSplit
{
    /// <summary>The piece itself where it fits, else the fewest upright panels, equally wide, each overlapping the next by exactly the overlap.</summary>
    /// <param name="piece">The graphic.</param>
    /// <param name="printableWidthMm">Printable width of the stock, mm.</param>
    /// <param name="overlapMm">What two neighbours show both, mm; 0 for a butt joint; under the printable width.</param>
    /// <returns>
    /// Panels <c>id/1</c>, <c>id/2</c> … from the left. They may not turn, so that all are printed the same way up, and carry no bleed of
    /// their own: the graphic's bleed is trimmed once the panels are joined.
    /// </returns>
    /// <exception cref="ArgumentException">The piece is a panel already.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The overlap is negative or not under the printable width.</exception>
    public static IReadOnlyList<Piece> Split(Piece piece, double printableWidthMm, double overlapMm)
    {
        ArgumentNullException.ThrowIfNull(piece);
        Bounds.Within(printableWidthMm, 1, 1_000_000);
        Bounds.Within(overlapMm, 0, printableWidthMm - 0.5);
        if (piece.Part is not null)
            throw new ArgumentException(Invariant($"{piece.Id}: found a panel; wanted a whole graphic."), nameof(piece));

        double width = piece.Printed.WidthMm, height = piece.Printed.HeightMm;
        if (width <= printableWidthMm || (piece.MayTurn && height <= printableWidthMm))
            return [piece];

        // n panels of width w with n − 1 overlaps o cover the width: n w − (n − 1) o = W. The least n with w within the stock is wanted.
        int count = (int)Math.Ceiling(((width - overlapMm) / (printableWidthMm - overlapMm)) - 1e-9);
        double panel = (width + ((count - 1) * overlapMm)) / count;
        return [.. Enumerable.Range(0, count).Select(i => Panel(piece, i, panel, overlapMm, height))];
    }

    /// <summary>The panels of a plan as pieces that keep direction and order.</summary>
    /// <param name="piece">The graphic.</param>
    /// <param name="plan">How it is parted.</param>
    /// <returns>
    /// The piece itself for a plan of one panel, else panels <c>id/1</c>, <c>id/2</c> … in the order of the plan. All are printed the same way up, so
    /// that their colours meet: a plan that lies on its side gives panels that fit no other way.
    /// </returns>
    /// <exception cref="ArgumentException">The piece is a panel already.</exception>
    public static IReadOnlyList<Piece> Split(Piece piece, PanelPlan plan)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(plan);
        if (piece.Part is not null)
            throw new ArgumentException(Invariant($"{piece.Id}: found a panel; wanted a whole graphic."), nameof(piece));
        return plan.Panels.Count == 1
            ? [piece]
            : [.. plan.Panels.Select(p => new Piece(Invariant($"{piece.Id}/{p.Number}"), plan.Printed(p).Size, 0, piece.Quantity, plan.Turned, plan.Printed(p), plan.SeamBleedMm))];
    }

    private static Piece Panel(Piece piece, int index, double width, double overlap, double height) => new(
        Invariant($"{piece.Id}/{index + 1}"),
        new(width, height),
        BleedMm: 0,
        piece.Quantity,
        MayTurn: false,
        Part: new RectMm(index * (width - overlap), 0, width, height));
}
