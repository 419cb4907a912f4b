using Laydown.Measures;
using Laydown.Raster.Screens;

namespace Laydown.Raster.Sheets;

/// <summary>One layer of one sheet, to be made into dots.</summary>
public sealed record SheetJob
{
    /// <summary>A job.</summary>
    /// <param name="columns">Dots across the scan, at least 1.</param>
    /// <param name="rows">Dots along the feed, at least 1.</param>
    /// <param name="pictures">What pieces show; all with as many inks as the screen takes.</param>
    /// <param name="pieces">What lies where; later ones lie on top.</param>
    /// <param name="screen">Brings laydown to dots.</param>
    /// <exception cref="ArgumentException">A picture has other inks, or a piece shows what its picture has not.</exception>
    public SheetJob(int columns, int rows, IReadOnlyList<SheetPicture> pictures, IReadOnlyList<PlacedPiece> pieces, ILayerScreen screen)
    {
        Columns = Bounds.Within(columns, 1, 10_000_000);
        Rows = Bounds.Within(rows, 1, 100_000_000);
        Pictures = pictures;
        Pieces = pieces;
        Screen = screen;
        for (int i = 0; i < pictures.Count; i++)
        {
            if (pictures[i].Inks != screen.Inks)
                throw new ArgumentException(Invariant($"Picture {i}: found {pictures[i].Inks} inks; wanted {screen.Inks}."), nameof(pictures));
        }

        foreach (PlacedPiece piece in pieces)
            Check(piece);
    }

    /// <summary>Dots across the scan.</summary>
    public int Columns { get; }

    /// <summary>Dots along the feed.</summary>
    public int Rows { get; }

    /// <summary>What pieces show.</summary>
    public IReadOnlyList<SheetPicture> Pictures { get; }

    /// <summary>What lies where.</summary>
    public IReadOnlyList<PlacedPiece> Pieces { get; }

    /// <summary>Brings laydown to dots.</summary>
    public ILayerScreen Screen { get; }

    private void Check(PlacedPiece piece)
    {
        SheetPicture picture = Pictures[Bounds.Within(piece.Picture, 0, Pictures.Count - 1)];
        bool fits = piece is { Width: > 0, Height: > 0, CropLeft: >= 0, CropTop: >= 0 }
            && piece.CropLeft + (long)piece.CropWidth <= picture.Columns && piece.CropTop + (long)piece.CropHeight <= picture.Rows;
        if (!fits)
            throw new ArgumentException(Invariant($"Piece {piece.Id}: found {piece.CropWidth} × {piece.CropHeight} pixels at {piece.CropLeft}, {piece.CropTop}; ")
                + Invariant($"wanted a part of its picture of {picture.Columns} × {picture.Rows}."), nameof(piece));
    }
}
