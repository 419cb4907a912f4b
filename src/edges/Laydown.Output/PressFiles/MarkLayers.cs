using Laydown.Layout.Marks;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Press.Stacks;
using Laydown.Raster.Scaling;
using Laydown.Raster.Sheets;
using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>The printed marks of a sheet in the layers that carry them: the first colour layer of the face printed first; crosses on the other face too.</summary>
internal sealed class MarkLayers
{
    private readonly RunContext context;
    private readonly IReadOnlyList<SheetMark> marks;

    private MarkLayers(RunContext context, IReadOnlyList<SheetMark> marks) => (this.context, this.marks) = (context, marks);

    /// <summary>A line that tells the marks of one sheet from those of another.</summary>
    public string Key => string.Join('|', marks.Select(m => Invariant($"{m.Kind},{m.Box},{m.Text}")));

    /// <summary>The marks of a sheet.</summary>
    /// <param name="context">The run.</param>
    /// <param name="sheet">Sheet from 0.</param>
    public static MarkLayers Of(RunContext context, int sheet) => new(context, RunMarks.Of(context, sheet).Marks);

    /// <summary>Marks that a layer carries.</summary>
    /// <param name="layer">Layer from 0.</param>
    public IReadOnlyList<SheetMark> In(int layer)
    {
        IReadOnlyList<Layer> layers = context.Run.Stack.Layers;
        SheetFace face = layers[layer].Face;
        bool carries = layer == FirstOf(layers, face);
        return !carries ? [] : face == layers[0].Face ? marks : [.. marks.Where(m => m.Kind == MarkKind.FaceCross)];
    }

    /// <summary>A sheet in pixels with the marks of a layer on top, and where their planes are found.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="layer">Layer from 0.</param>
    /// <param name="planes">Planes of the layer.</param>
    /// <param name="ppi">Resolution, ppi.</param>
    /// <param name="planesOf">Planes of pieces.</param>
    public (SheetPixels Sheet, Func<PlacedPixels, (IPlanes Planes, bool Mirrored)> PlanesOf) On(
        SheetPixels sheet, int layer, IReadOnlyList<InkPlane> planes, double ppi, Func<PlacedPixels, (IPlanes Planes, bool Mirrored)> planesOf)
    {
        Dictionary<string, MarkPlanes> drawn = new(StringComparer.Ordinal);
        List<PlacedPixels> placed = [];
        foreach (SheetMark mark in In(layer))
        {
            (int left, int top, int wide, int high) = Place(mark.Box, ppi, ppi, sheet.Rows);

            // No item has such an id.
            string id = Invariant($"\u0000mark {placed.Count}");
            drawn[id] = new(MarkPicture.Draw(mark, wide, high), high, wide, planes);
            placed.Add(new(id, left, top, wide, high, false, 0, 0));
        }

        return placed.Count == 0 ? (sheet, planesOf) : (sheet with { Pieces = [.. sheet.Pieces, .. placed] },
            piece => drawn.TryGetValue(piece.ItemId, out MarkPlanes? mark) ? (mark, false) : planesOf(piece));
    }

    /// <summary>Marks of a layer as pictures and pieces of a job in dots, to be laid over all others.</summary>
    /// <param name="layer">The layer in dots.</param>
    /// <param name="scanDpi">Dots per inch across.</param>
    /// <param name="feedDpi">Dots per inch along.</param>
    /// <param name="firstPicture">Number of the first of these pictures in the job.</param>
    /// <param name="turned">How the sheet was turned over before; null where it was not.</param>
    public (IReadOnlyList<SheetPicture> Pictures, IReadOnlyList<PlacedPiece> Pieces) Dots(DotLayer layer, int scanDpi, int feedDpi, int firstPicture, SheetTurn? turned)
    {
        List<SheetPicture> pictures = [];
        List<PlacedPiece> pieces = [];
        foreach (SheetMark mark in In(layer.Layer))
        {
            (int left, int top, int wide, int high) = Place(mark.Box, scanDpi, feedDpi, layer.Placement.Rows);
            pieces.Add(new(
                Invariant($"mark {pieces.Count + 1}"), firstPicture + pictures.Count, turned == SheetTurn.Sideways ? layer.Placement.Columns - left - wide : left,
                turned == SheetTurn.HeadToFoot ? layer.Placement.Rows - top - high : top,
                wide, high, 0, 0, QuarterTurn.None, false));
            pictures.Add(new(new MarkPlanes(MarkPicture.Draw(mark, wide, high), high, wide, layer.Inks), wide, high, ScaleKernel.CatmullRom, [], []));
        }

        return (pictures, pieces);
    }

    private static (int Left, int Top, int Wide, int High) Place(RectMm box, double across, double along, int rows)
    {
        int left = SheetPixels.Nearest(box.XMm, across), right = SheetPixels.Nearest(box.RightMm, across);
        int top = rows - SheetPixels.Nearest(box.TopMm, along), bottom = rows - SheetPixels.Nearest(box.YMm, along);
        return (left, top, Math.Max(1, right - left), Math.Max(1, bottom - top));
    }

    private static int FirstOf(IReadOnlyList<Layer> layers, SheetFace face)
    {
        List<int> own = [.. Enumerable.Range(0, layers.Count).Where(l => layers[l].Face == face)];
        int colour = own.FindIndex(l => layers[l].Group == InkGroup.Colour);
        return own[Math.Max(0, colour)];
    }
}
