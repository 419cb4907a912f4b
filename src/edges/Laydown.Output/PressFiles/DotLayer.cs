using Laydown.Formats.TiffWriting;

namespace Laydown.Output.PressFiles;

/// <summary>One layer of one sheet that is to be made into dots.</summary>
/// <param name="Sheet">Sheet from 0.</param>
/// <param name="Layer">Layer from 0.</param>
/// <param name="Inks">Its planes.</param>
/// <param name="Placement">The sheet in dots.</param>
/// <param name="Same">An earlier sheet with the same picture, whose files this one shares; null where there is none.</param>
internal sealed record DotLayer(int Sheet, int Layer, IReadOnlyList<InkPlane> Inks, SheetDots Placement, int? Same)
{
    /// <summary>The layer of the first face whose files it shares; null where it has its own.</summary>
    public int? SameLayer { get; init; }

    /// <summary>Whether another layer's files are its own too.</summary>
    public bool IsShared => Same is not null || SameLayer is not null;

    /// <summary>How much work it is: dots of all inks.</summary>
    public double Work => (double)Placement.Rows * Placement.Columns * Inks.Count;

    /// <summary>Name of an ink's file.</summary>
    /// <param name="ink">Plane from 0.</param>
    public string FileName(int ink) => Name(Sheet, Layer, ink);

    /// <summary>Name of the file whose bytes it shares, or its own.</summary>
    /// <param name="ink">Plane from 0.</param>
    public string SharedName(int ink) => Name(Same ?? Sheet, SameLayer ?? Layer, ink);

    /// <summary>What an ink's file says about itself.</summary>
    /// <param name="ink">Plane from 0.</param>
    /// <param name="bits">Bits of a dot.</param>
    /// <param name="dpi">Dots per inch across and along.</param>
    /// <param name="rowsPerStrip">Rows of a strip.</param>
    /// <param name="packing">How strips are packed.</param>
    /// <param name="description">A line for people.</param>
    public DotHeader Header(int ink, int bits, (int Scan, int Feed) dpi, int rowsPerStrip, DotPacking packing, string description) =>
        new(Placement.Columns, Placement.Rows, bits, dpi.Scan, dpi.Feed, rowsPerStrip, packing, Inks[ink].Name, description);

    // Names of contone files end with the layer's group, which may be an ink's name too.
    private string Name(int sheet, int layer, int ink) => Invariant($"sheet-{sheet + 1:00}-layer-{layer + 1}-{DotInks.FileWord(Inks[ink].Name)}-dots.tif");
}
