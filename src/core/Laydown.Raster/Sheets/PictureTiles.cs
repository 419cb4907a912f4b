using Laydown.Raster.Scaling;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Sheets;

/// <summary>Makes parts of pictures at the resolution of the press. One for each worker; its tiles are used again.</summary>
internal sealed class PictureTiles
{
    private readonly IReadOnlyList<SheetPicture> pictures;
    private readonly IReadOnlyList<(AxisScale Rows, AxisScale Columns)?> scales;
    private readonly Scaler?[] scalers;
    private readonly Tile start = new(1, 1, 1), scaled = new(1, 1, 1), extended = new(1, 1, 1);
    private readonly StageRun atSource = new(), atPress = new();

    /// <summary>Tiles of the pictures.</summary>
    /// <param name="pictures">The pictures.</param>
    /// <param name="scales">How each is scaled; none where its plates have the resolution of the press.</param>
    public PictureTiles(IReadOnlyList<SheetPicture> pictures, IReadOnlyList<(AxisScale Rows, AxisScale Columns)?> scales)
    {
        this.pictures = pictures;
        this.scales = scales;
        scalers = new Scaler?[pictures.Count];
    }

    /// <summary>One part of one picture, all stages done.</summary>
    /// <returns>A tile that holds until the next call; its place is in the picture.</returns>
    public Tile Make(int number, PixelPart part)
    {
        // What the stages at the press look at, as far as there is a picture.
        SheetPicture picture = pictures[number];
        PixelPart outer = part.Grown(picture.PressReach);
        PixelPart inner = outer.And(new(0, 0, picture.Rows, picture.Columns));
        Tile there = AtPressSize(number, picture, inner);
        if (inner == outer)
            return atPress.Through(picture.AtPress, there);
        Shape(extended, there.Inks, outer);
        SourceTile.Extend(there, extended);
        return atPress.Through(picture.AtPress, extended);
    }

    private Tile AtPressSize(int number, SheetPicture picture, PixelPart inner)
    {
        if (scales[number] is not { } scale)
            return FromSource(picture, inner);
        (int row, int rows) = scale.Rows.SourceRange(inner.Row, inner.Rows);
        (int column, int columns) = scale.Columns.SourceRange(inner.Column, inner.Columns);
        Tile source = FromSource(picture, new(row, column, rows, columns));
        Shape(scaled, source.Inks, inner);
        (scalers[number] ??= new(scale.Rows, scale.Columns)).Run(source, scaled);
        return scaled;
    }

    private Tile FromSource(SheetPicture picture, PixelPart part)
    {
        Shape(start, picture.Plates.Inks, part.Grown(StageRun.ReachOf(picture.AtSource)));
        SourceTile.Fill(picture.Plates, start);
        return atSource.Through(picture.AtSource, start);
    }

    private static void Shape(Tile tile, int inks, PixelPart part)
    {
        tile.Shape(inks, part.Rows, part.Columns);
        tile.PlaceAt(part.Row, part.Column);
    }
}
