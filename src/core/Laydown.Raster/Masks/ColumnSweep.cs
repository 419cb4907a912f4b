using System.Numerics;
using System.Runtime.CompilerServices;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>How far each pixel is from the nearest sought pixel straight above or straight below it, many columns at once.</summary>
/// <param name="far">What stands for further away than matters; fits the numbers.</param>
/// <param name="sought">Value of the pixels distances are measured to: bare or full.</param>
internal readonly struct ColumnSweep<TLanes, TVector, TElement>(int far, ushort sought)
    where TLanes : INumberLanes<TVector, TElement>
    where TVector : struct
    where TElement : unmanaged, INumberBase<TElement>
{
    /// <summary>Columns up to a whole number of registers.</summary>
    public static int Padded(int columns) => (columns + TLanes.Count - 1) / TLanes.Count * TLanes.Count;

    /// <summary>Distances upward, row after row of the target, padded.</summary>
    /// <param name="source">The mask with a margin.</param>
    /// <param name="ink">Its plane.</param>
    /// <param name="margin">Rows of the source above the target's first.</param>
    /// <param name="near">Takes the distances and one more row, which is scratch.</param>
    public void FromAbove(Tile source, int ink, int margin, Span<TElement> near)
    {
        int padded = Padded(source.Columns), rows = (near.Length / padded) - 1;
        Span<TElement> above = near[(rows * padded)..];
        above.Fill(TElement.CreateChecked(far));
        for (int row = 0; row < margin + rows; row++)
        {
            Span<TElement> next = row < margin ? above : near.Slice((row - margin) * padded, padded);
            Step(source.Row(ink, row), above, next);
            above = next;
        }
    }

    /// <summary>Distances one row further on: 0 on a sought pixel, else one more, at most far.</summary>
    public void Step(Span<ushort> line, Span<TElement> before, Span<TElement> after)
    {
        TVector one = TLanes.All(1), most = TLanes.All(far);
        ref ushort pixels = ref line[0];
        int whole = line.Length / TLanes.Count * TLanes.Count;
        for (int x = 0; x < whole; x += TLanes.Count)
        {
            TVector distance = TLanes.Least(TLanes.Add(TLanes.Load(ref before[x]), one), most);
            TLanes.Store(TLanes.And(distance, TLanes.Others(ref Unsafe.Add(ref pixels, x), sought)), ref after[x]);
        }

        if (whole == line.Length)
            return;

        // The last pixels are laid into a register's width of pixels that are not sought.
        Span<ushort> rest = stackalloc ushort[64];
        rest.Fill((ushort)(Tile.Full - sought));
        line[whole..].CopyTo(rest);
        TVector last = TLanes.Least(TLanes.Add(TLanes.Load(ref before[whole]), one), most);
        TLanes.Store(TLanes.And(last, TLanes.Others(ref rest[0], sought)), ref after[whole]);
    }
}
