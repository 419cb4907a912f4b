using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Laydown.Colour.Inversion;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Separation;

/// <summary>Turns the channels of a picture into the inks of a print by a device link: the place of light-ink split and black in one table.</summary>
/// <remarks>
/// Simplex interpolation: along the diagonal of the cell in the order of the channels' parts, so greys stay on their axis; four nodes a
/// pixel from RGB instead of eight, five from CMYK instead of sixteen. Whole numbers: places among the nodes to 1/16384 of a cell, nodes of 16 bits.
/// Nodes keep the limits and a mean of nodes keeps them too, rounded down: the limits always hold. Within 13 codes of 65535 (a twentieth of a code
/// of 255) of the same way in double arithmetic; a curve that is straight to within half a code of 16 bits is taken for straight. Keeps nothing between tiles.
/// Measured, million pixels a second of one core, from a natural picture to 7 inks, plain / 256 / 512 bits wide: RGB with 33³ nodes 23 / 550 / 700,
/// with 65³ 16 / 440 / 590, with bent curves before 33³ 23 / 360 / 410; CMYK with 17⁴ 21 / 430 / 550. Beside Little CMS 2.14 running the same link in the same run, 256 / 512 bits: RGB 33³
/// 18 / 23 times as fast, 65³ 17 / 22 times, CMYK 28 / 37 times.
/// </remarks>
public sealed unsafe class InkLink : ITileStage
{
    private readonly LinkNodes link;
    private readonly Lanes lanes;

    /// <summary>A stage for a link.</summary>
    /// <exception cref="ArgumentException">The link's numbers do not fit together, or it has over 8 inks.</exception>
    public InkLink(LinkTables link)
        : this(link, LanesHere.Best)
    {
    }

    /// <summary>The same at a width of its own.</summary>
    internal InkLink(LinkTables link, Lanes lanes)
    {
        // The plain reader checks the numbers.
        _ = new LinkReader(link);
        if (link.InkNames.Count > LinkNodes.MostInks)
            throw new ArgumentException(Invariant($"{link.InkNames.Count} inks: wanted at most {LinkNodes.MostInks}."), nameof(link));
        this.link = new(link);
        this.lanes = link.Channels is 3 or 4 ? lanes : Lanes.Plain;
    }

    /// <summary>No neighbours needed: the stage looks at one pixel alone.</summary>
    public int ReachPixels => 0;

    /// <inheritdoc/>
    public int TargetInks(int sourceInks) => sourceInks == link.Channels
        ? link.Inks
        : throw new ArgumentException(Invariant($"Channels: found {sourceInks}; wanted {link.Channels}."), nameof(sourceInks));

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        ushort* spareFrom = stackalloc ushort[link.Channels * LinkBlock.Most], spareTo = stackalloc ushort[LinkNodes.MostInks * LinkBlock.Most];
        int* places = stackalloc int[link.Channels * LinkBlock.Most];
        int* at = stackalloc int[LinkBlock.Corners * LinkBlock.Most], pairs = stackalloc int[LinkBlock.MostPairs * LinkBlock.Most];
        ushort** from = stackalloc ushort*[link.Channels], to = stackalloc ushort*[LinkNodes.MostInks];
        LinkBlock block = new(places, at, pairs, from, to, spareFrom, spareTo);
        fixed (short* values = link.Values)
        fixed (ushort* held = source.Row(0, 0), heldTarget = target.Row(0, 0))
        {
            for (int row = 0; row < source.Rows; row++)
            {
                for (int channel = 0; channel < link.Channels; channel++)
                    from[channel] = (ushort*)Unsafe.AsPointer(ref MemoryMarshal.GetReference(source.Row(channel, row)));
                for (int ink = 0; ink < LinkNodes.MostInks; ink++)
                    to[ink] = ink < link.Inks ? (ushort*)Unsafe.AsPointer(ref MemoryMarshal.GetReference(target.Row(ink, row))) : block.SpareTo(ink);
                Row(values + link.Lead, block, source.Columns);
            }
        }
    }

    private void Row(short* table, LinkBlock block, int columns)
    {
        for (int left = columns; left > 0; left -= LinkBlock.Most)
        {
            int count = Math.Min(LinkBlock.Most, left), whole = count & -LinkBlock.Step;
            Kernel(table, block, whole);
            block.Advance(link.Channels, link.Inks, whole);
            if (whole < count)
                End(table, block, count - whole);
        }
    }

    // The end of a row is made up to a whole step in memory of its own; what stands in the rest of it does not matter.
    private void End(short* table, LinkBlock block, int count)
    {
        ushort** to = stackalloc ushort*[LinkNodes.MostInks];
        for (int channel = 0; channel < link.Channels; channel++)
        {
            new ReadOnlySpan<ushort>(block.From[channel], count).CopyTo(new(block.SpareFrom(channel), count));
            block.From[channel] = block.SpareFrom(channel);
        }

        for (int ink = 0; ink < link.Inks; ink++)
        {
            to[ink] = block.To[ink];
            block.To[ink] = block.SpareTo(ink);
        }

        Kernel(table, block, LinkBlock.Step);
        for (int ink = 0; ink < link.Inks; ink++)
            new ReadOnlySpan<ushort>(block.To[ink], count).CopyTo(new(to[ink], count));
    }

    private void Kernel(short* table, LinkBlock block, int count)
    {
        switch (lanes)
        {
            case Lanes.Wide512:
                Places(block, count);
                if (link.Channels == 3)
                    Link512.Corners3(link, block, count);
                else
                    Link512.Corners4(link, block, count);
                Link512.Mix(table, block, count, link.Channels == 4);
                break;
            case Lanes.Wide256:
                Places(block, count);
                if (link.Channels == 3)
                    Link256.Corners3(link, block, count);
                else
                    Link256.Corners4(link, block, count);
                Link256.Mix(table, block, count, link.Channels == 4);
                break;
            default:
                LinkPlain.Run(link, table, block, count);
                break;
        }
    }

    private void Places(LinkBlock block, int count)
    {
        for (int channel = 0; channel < link.Channels; channel++)
        {
            if (link.Curve(channel) is { } curve)
                LookUps.Run(new(block.From[channel], count), curve, new Span<int>(block.PlacesOf(channel), count));
            else if (lanes == Lanes.Wide512)
                Link512.Straight(block.From[channel], link.Cells, block.PlacesOf(channel), count);
            else
                Link256.Straight(block.From[channel], link.Cells, block.PlacesOf(channel), count);
        }
    }
}
