using Laydown.Layout.Judging;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Hands;

/// <summary>What a layout made by hand is judged by: the same rules the searches keep.</summary>
/// <param name="Pieces">Every piece of the run and how often it is wanted.</param>
/// <param name="Sheet">Size of a bare board; for a roll its width and the length left on it, mm.</param>
/// <param name="EdgeMarginMm">Unprintable margin: on each side of a board, on the two sides of a roll, mm; 0 or more.</param>
/// <param name="GapMm">Least distance between two printed rectangles, or two contours, mm; 0 or more.</param>
/// <param name="Process">Free or edge to edge.</param>
public sealed record HandRules(IReadOnlyList<Piece> Pieces, SizeMm Sheet, double EdgeMarginMm, double GapMm, CutProcess Process)
{
    /// <summary>Whether the sheet is one length of roll, cut where its last piece ends.</summary>
    public bool IsRoll { get; init; }

    /// <summary>Bare length before the first piece of a roll and after the last, mm.</summary>
    public double LeadMm { get; init; }

    /// <summary>Shorter side a rest must have to be kept as an offcut, mm (common practice, no source).</summary>
    public double OffcutLeastSideMm { get; init; } = 150;

    /// <summary>Places of the sheet where nothing may lie: clamps, damage; mm.</summary>
    public IReadOnlyList<RectMm> KeepOuts { get; init; } = [];

    /// <summary>Which size or offcut the sheets are, where there were several to take from; else null.</summary>
    public string? StockId { get; init; }

    /// <summary>How the two printed faces of the sheets belong together; null where one is printed.</summary>
    public SheetFaces? Faces { get; init; }

    /// <summary>Contours of the pieces, where they may reach into each other's rectangles; null where each takes its printed rectangle.</summary>
    public HandContours? Contours { get; init; }

    /// <summary>Where pieces may lie, mm on the sheet.</summary>
    public RectMm Printable => IsRoll
        ? new(EdgeMarginMm, LeadMm, Sheet.WidthMm - (2 * EdgeMarginMm), Sheet.HeightMm - (2 * LeadMm))
        : new RectMm(0, 0, Sheet.WidthMm, Sheet.HeightMm).Grown(-EdgeMarginMm);

    /// <summary>What pieces of a sheet are judged by.</summary>
    public SheetRoom Room => new(Printable, GapMm, Process, KeepOuts);

    /// <summary>A piece by its id, or null.</summary>
    public Piece? Find(string pieceId) => Pieces.FirstOrDefault(p => string.Equals(p.Id, pieceId, StringComparison.Ordinal));

    /// <summary>A piece laid down, as it is judged: by its contour where there are contours, else by its printed rectangle.</summary>
    /// <exception cref="ArgumentException">The piece is none of these.</exception>
    public LyingPiece LyingOf(HandSpot spot)
    {
        RectMm place = PlaceOf(spot);
        return Contours is null ? new(place) : Contours.Lying(spot);
    }

    /// <summary>The printed rectangle of a piece laid down, mm on the sheet.</summary>
    /// <exception cref="ArgumentException">The piece is none of these.</exception>
    public RectMm PlaceOf(HandSpot spot)
    {
        ArgumentNullException.ThrowIfNull(spot);
        Piece piece = Find(spot.PieceId) ?? throw new ArgumentException(Invariant($"Piece: found '{spot.PieceId}'; wanted one of the run."), nameof(spot));
        SizeMm size = spot.Turned ? piece.Printed.Turned() : piece.Printed;
        return new(spot.XMm, spot.YMm, size.WidthMm, size.HeightMm);
    }
}
