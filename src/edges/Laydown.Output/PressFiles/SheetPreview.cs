using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Optics.Looks;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Shop.Layers;
using SkiaSharp;

namespace Laydown.Output.PressFiles;

/// <summary>Small pictures of a whole sheet as the viewer of the pieces sees it, from the same planes as the press files.</summary>
internal sealed class SheetPreview
{
    private readonly SheetPixels pixels;
    private readonly SheetBand[] layers;
    private readonly int[] inks;
    private readonly IReadOnlyList<byte>?[] acting;
    private readonly bool fromBehind;

    /// <summary>Brings every piece's planes to the size of the preview.</summary>
    /// <param name="planes">Planes of the run.</param>
    /// <param name="sheet">The sheet.</param>
    /// <param name="marks">Its printed marks.</param>
    /// <param name="printedOf">Printed size of an item.</param>
    /// <param name="mostPixels">Longest side, pixels.</param>
    /// <param name="mostPpi">Resolution of the planes; the preview is never finer.</param>
    /// <param name="optics">Optics of the inks, or null: what acts of what is sent.</param>
    /// <param name="cancellation">Looked at for each row.</param>
    public SheetPreview(
        RunPlanes planes, SheetLayout sheet, MarkLayers marks, Func<string, SizeMm> printedOf, int mostPixels, double mostPpi, InkOptics? optics,
        CancellationToken cancellation)
    {
        acting = [.. Enumerable.Range(0, planes.LayerCount).SelectMany(planes.InksOf).Select(ink => StackLights.ActingOf(ink.Role, optics))];
        double ppi = Math.Min(mostPpi, mostPixels * 25.4 / Math.Max(1, Math.Max(sheet.Sheet.WidthMm, sheet.Sheet.HeightMm)));
        pixels = SheetPixels.Of(sheet, ppi, printedOf);
        fromBehind = planes.FirstFace == SheetFace.Second;
        inks = [.. Enumerable.Range(0, planes.LayerCount).Select(l => planes.InksOf(l).Count)];
        layers = [.. inks.Select((count, layer) => Band(planes, marks, layer, count, ppi, printedOf, cancellation))];
    }

    /// <summary>The sheet in a light, as PNG in sRGB, as a viewer sees it: from the back, left and right are changed.</summary>
    public byte[] Png(StackLook look, CancellationToken cancellation, Laydown.Press.Stacks.Viewer viewer = Laydown.Press.Stacks.Viewer.Front)
    {
        byte[] rgb = new byte[pixels.Rows * pixels.Columns * 3];
        byte[][] bands = [.. inks.Select(count => new byte[pixels.Rows * pixels.Columns * count])];
        for (int layer = 0; layer < layers.Length; layer++)
            layers[layer].Fill(0, pixels.Rows, bands[layer]);
        Parallel.For(0, pixels.Rows, new ParallelOptions { CancellationToken = cancellation }, row => Row(look, bands, row, rgb, fromBehind != (viewer == Laydown.Press.Stacks.Viewer.Back)));
        return Encoded(rgb);
    }

    private SheetBand Band(
        RunPlanes planes, MarkLayers marks, int layer, int count, double ppi, Func<string, SizeMm> printedOf, CancellationToken cancellation)
    {
        Dictionary<(string Item, bool Turned, bool BackUp), (IPlanes Planes, bool Mirrored)> small = [];
        foreach (PlacedPixels piece in pixels.Pieces)
        {
            if (small.ContainsKey((piece.ItemId, piece.Turned, piece.BackUp)))
                continue;
            SizeMm printed = printedOf(piece.ItemId);
            (int rows, int columns) = (SheetPixels.Of(printed.HeightMm, ppi), SheetPixels.Of(printed.WidthMm, ppi));
            (PlaneFile file, bool mirrored) = planes.Of(piece, layer);
            (int high, int wide) = piece.Turned ? (columns, rows) : (rows, columns);
            small[(piece.ItemId, piece.Turned, piece.BackUp)] = (new PlaneMemory(file, high, wide, cancellation), mirrored);
        }

        (SheetPixels marked, Func<PlacedPixels, (IPlanes, bool)> planesOf) = marks.On(pixels, layer, planes.InksOf(layer), ppi, piece => small[(piece.ItemId, piece.Turned, piece.BackUp)]);
        return new(marked, count, planesOf, turned: null);
    }

    private void Row(StackLook look, byte[][] bands, int row, byte[] rgb, bool turned)
    {
        int columns = pixels.Columns;
        byte[] coverages = new byte[inks.Sum() * columns];
        int plane = 0;
        for (int layer = 0; layer < bands.Length; layer++)
        {
            for (int ink = 0; ink < inks[layer]; ink++, plane++)
            {
                int at = (row * columns * inks[layer]) + ink;
                IReadOnlyList<byte>? acts = acting[plane];
                for (int x = 0; x < columns; x++, at += inks[layer])
                    coverages[(plane * columns) + (turned ? columns - 1 - x : x)] = acts is null ? bands[layer][at] : acts[bands[layer][at]];
            }
        }

        look.Row(coverages, columns, rgb.AsSpan(row * columns * 3, columns * 3));
    }

    private byte[] Encoded(byte[] rgb)
    {
        using SKBitmap bitmap = new(new SKImageInfo(pixels.Columns, pixels.Rows, SKColorType.Rgba8888, SKAlphaType.Opaque, SKColorSpace.CreateSrgb()));
        Span<byte> target = bitmap.GetPixelSpan();
        for (int row = 0; row < pixels.Rows; row++)
        {
            Span<byte> line = target.Slice(row * bitmap.RowBytes, pixels.Columns * 4);
            ReadOnlySpan<byte> from = rgb.AsSpan(row * pixels.Columns * 3, pixels.Columns * 3);
            for (int x = 0; x < pixels.Columns; x++)
            {
                from.Slice(x * 3, 3).CopyTo(line[(x * 4)..]);
                line[(x * 4) + 3] = 255;
            }
        }

        using SKData data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }
}
