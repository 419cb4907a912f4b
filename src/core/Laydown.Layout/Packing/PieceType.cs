using Laydown.Layout.Sheets;

namespace Laydown.Layout.Packing;

/// <summary>A piece as the packing sees it: its sides grown by the gap, so that plain touching keeps the gap.</summary>
/// <param name="Index">Place in the list of pieces.</param>
/// <param name="Piece">The piece.</param>
/// <param name="W">Width and gap, µm.</param>
/// <param name="H">Height and gap, µm.</param>
/// <param name="MayTurn">Whether turning is allowed and makes a difference.</param>
internal sealed record PieceType(int Index, Piece Piece, int W, int H, bool MayTurn)
{
    internal long Area => (long)W * H;

    /// <summary>Pieces as types; sizes are rounded up to whole micrometres.</summary>
    /// <exception cref="ArgumentException">Two pieces share an id.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A size is not over 0 or a quantity is under 1.</exception>
    internal static IReadOnlyList<PieceType> From(IReadOnlyList<Piece> pieces, double gapMm)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        int gap = Micro.Up(Measures.Bounds.Within(gapMm, 0, 1000));
        if (pieces.Select(p => p.Id).Distinct(StringComparer.Ordinal).Count() != pieces.Count)
            throw new ArgumentException("Pieces: found one id twice; wanted each id once.", nameof(pieces));

        return [.. pieces.Select((p, i) => From(p, i, gap))];
    }

    private static PieceType From(Piece piece, int index, int gap)
    {
        Measures.Bounds.Within(piece.Printed.WidthMm, 0.1, 1_000_000, nameof(piece));
        Measures.Bounds.Within(piece.Printed.HeightMm, 0.1, 1_000_000, nameof(piece));
        Measures.Bounds.Within(piece.Quantity, 1, 1_000_000, nameof(piece));
        int w = Micro.Up(piece.Printed.WidthMm) + gap, h = Micro.Up(piece.Printed.HeightMm) + gap;
        return new(index, piece, w, h, piece.MayTurn && w != h);
    }

    /// <summary>Whether it fits a bare area, turned where that is allowed.</summary>
    internal bool Fits(int width, int height) => (W <= width && H <= height) || (MayTurn && H <= width && W <= height);
}
