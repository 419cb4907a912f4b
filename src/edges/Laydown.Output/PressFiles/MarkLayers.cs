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
    private readonly SheetLayout layout;
    private readonly IReadOnlyList<SheetMark> marks;

    private MarkLayers(RunContext context, SheetLayout layout, IReadOnlyList<SheetMark> marks) => (this.context, this.layout, this.marks) = (context, layout, marks);

    /// <summary>A line that tells the marks of one sheet from those of another.</summary>
    public string Key => string.Join('|', marks.Select(m => Invariant($"{m.Kind},{m.Box},{m.Text}")));

    /// <summary>The marks of a sheet.</summary>
    /// <param name="context">The run.</param>
    /// <param name="sheet">Sheet from 0.</param>
    public static MarkLayers Of(RunContext context, int sheet) => new(context, context.Run.Sheets[sheet], RunMarks.Of(context, sheet).Marks);

    /// <summary>Marks that a layer's own file carries; those of a file that is printed on both faces are told under its first layer.</summary>
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
        (int file, SheetTurn? again) = FileOf(layer);
        foreach (SheetMark mark in In(file))
        {
            (int left, int top, int wide, int high) = Place(mark.Box, ppi, ppi, sheet.Rows);
            (left, top) = Turned(again, left, top, wide, high, sheet.Columns, sheet.Rows);

            // No item has such an id.
            string id = Invariant($"\u0000mark {placed.Count}");
            drawn[id] = new(Through(again, MarkPicture.Draw(mark, wide, high), wide), high, wide, planes);
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
            (left, top) = Turned(turned, left, top, wide, high, layer.Placement.Columns, layer.Placement.Rows);
            pieces.Add(new(
                Invariant($"mark {pieces.Count + 1}"), firstPicture + pictures.Count, left, top, wide, high, 0, 0, QuarterTurn.None, false));
            pictures.Add(new(new MarkPlanes(MarkPicture.Draw(mark, wide, high), high, wide, layer.Inks), wide, high, ScaleKernel.CatmullRom, [], []));
        }

        return (pictures, pieces);
    }

    private static (int Left, int Top) Turned(SheetTurn? turn, int left, int top, int wide, int high, int columns, int rows) =>
        (turn == SheetTurn.Sideways ? columns - left - wide : left, turn == SheetTurn.HeadToFoot ? rows - top - high : top);

    // Sideways each row runs the other way, head to foot the last row comes first.
    private static byte[] Through(SheetTurn? turn, byte[] pixels, int wide)
    {
        if (turn == SheetTurn.HeadToFoot)
            Array.Reverse(pixels);
        for (int row = 0; turn is not null && row < pixels.Length; row += wide)
            Array.Reverse(pixels, row, wide);
        return pixels;
    }

    private static (int Left, int Top, int Wide, int High) Place(RectMm box, double across, double along, int rows)
    {
        int left = SheetPixels.Nearest(box.XMm, across), right = SheetPixels.Nearest(box.RightMm, across);
        int top = rows - SheetPixels.Nearest(box.TopMm, along), bottom = rows - SheetPixels.Nearest(box.YMm, along);
        return (left, top, Math.Max(1, right - left), Math.Max(1, bottom - top));
    }

    // Printed once more from the file of the first face, its marks stand where the turned sheet brings them: seen through the sheet, mirrored.
    private (int Layer, SheetTurn? Again) FileOf(int layer)
    {
        LayerStack stack = context.Run.Stack;
        return layout.Faces is { OneFile: true } faces && stack.Layers[layer].Face != stack.Layers[0].Face ? (BackUpLayers.Of(stack, layer), faces.Turn) : (layer, null);
    }

    private static int FirstOf(IReadOnlyList<Layer> layers, SheetFace face)
    {
        List<int> own = [.. Enumerable.Range(0, layers.Count).Where(l => layers[l].Face == face)];
        int colour = own.FindIndex(l => layers[l].Group == InkGroup.Colour);
        return own[Math.Max(0, colour)];
    }
}
