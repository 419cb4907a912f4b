using Laydown.Raster.Masks;
using Laydown.Raster.Scaling;
using Laydown.Raster.Screens;
using Laydown.Raster.Separation;
using Laydown.Raster.Sheets;
using Laydown.Raster.Tiles;

namespace Laydown.Bench;

/// <summary>A board of 1220 × 2440 mm at 720 × 720 dots an inch with many pieces, from pictures of 200 ppi in raw files: what the raster engine is measured on.</summary>
/// <param name="Columns">Dots across the scan.</param>
/// <param name="Rows">Dots along the feed.</param>
/// <param name="Pictures">Raw files of RGB, plane after plane.</param>
/// <param name="Pieces">What lies where.</param>
internal sealed record RasterSheet(int Columns, int Rows, IReadOnlyList<RawRgb> Pictures, IReadOnlyList<PlacedPiece> Pieces) : IDisposable
{
    /// <summary>Dots an inch, both ways.</summary>
    public const double Dpi = 720;

    private const double Ppi = 200, ChokeMm = 0.3, PatternMm = 406.6;

    private static readonly QuarterTurn[] Ways = [QuarterTurn.Left, QuarterTurn.None, QuarterTurn.None, QuarterTurn.Half];

    /// <summary>A board of a height, pictures written to a folder.</summary>
    public static RasterSheet Write(string folder, byte[] natural, byte[]? mask, int side, double heightMm)
    {
        int columns = Dots(1220), rows = Dots(heightMm);
        List<RawRgb> pictures = [];
        List<PlacedPiece> pieces = [];
        pictures.Add(RawRgb.Write(Path.Combine(folder, "large.raw"), natural, mask, side, Points(1200), Points(92), 0));
        for (int i = 0; i < 2; i++)
            pictures.Add(RawRgb.Write(Path.Combine(folder, Invariant($"small-{i}.raw")), natural, mask, side, Points(300), Points(300), 1 + i));

        // The same share of each way of lying at every length: a wide piece, then one turned to the left, one mirrored, one upright, one upside down.
        for (double top = 5; top < heightMm; top += PatternMm)
        {
            pieces.Add(new(Invariant($"{pieces.Count}"), 0, Dots(10), Dots(top), Dots(1200), Dots(92), 0, 0, QuarterTurn.None, false));
            for (int column = 0; column < Ways.Length; column++)
            {
                (int left, int down) = (Dots(8 + (column * 302)), Dots(top + 97));
                pieces.Add(new(Invariant($"{pieces.Count}"), 1 + (column % 2), left, down, Dots(300), Dots(300), 0, 0, Ways[column], column == 1));
            }
        }

        return new(columns, rows, pictures, pieces);
    }

    /// <summary>The job of the six colour inks.</summary>
    public SheetJob Colour(DropLevels drops)
    {
        InkLink link = new(RasterInks.Link(33));
        ITileStage[] limits = [new PerInkLimit([100, 100, 100, 100 * RasterInks.MostBlack, 100, 100]), new TotalInkLimit(100 * RasterInks.MostTotal, 3)];
        ILayerScreen screen = LayerScreens.Of(
            [new("Cyan", 0.6, null), new("Magenta", 0.6, null), new("Yellow", 0.1, null), new("Black", 1, null), new("Light Cyan", 0.2, 0), new("Light Magenta", 0.2, 1)],
            drops, ScreenKind.Arrays);
        return new(Columns, Rows, [.. Pictures.Select(p => Of(p, [link], limits))], Pieces, screen);
    }

    /// <summary>The job of the white under the picture, drawn in by 0.3 mm, exactly.</summary>
    public SheetJob White(DropLevels drops)
    {
        ITileStage[] source = [new InkLink(RasterInks.Link(33)), new AnyInk()], press = [new Threshold(2), new Choke(ChokeMm * Dpi / 25.4)];
        return new(
            Columns, Rows, [.. Pictures.Select(p => Of(p, source, press))], Pieces, LayerScreens.Of([new("White", 0.3, null)], drops, ScreenKind.Arrays));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (RawRgb picture in Pictures)
            picture.Dispose();
    }

    private static SheetPicture Of(RawRgb picture, IReadOnlyList<ITileStage> source, IReadOnlyList<ITileStage> press) => new(
        picture, (int)Math.Round(picture.Columns * Dpi / Ppi), (int)Math.Round(picture.Rows * Dpi / Ppi), ScaleKernel.CatmullRom, source, press);

    private static int Dots(double mm) => (int)Math.Round(mm * Dpi / 25.4);

    // Whole points such that a piece's dots never exceed its picture's.
    private static int Points(double mm) => (int)Math.Ceiling(mm * Ppi / 25.4) + 1;
}
