using Laydown.Layout.Rectangles;

namespace Laydown.Layout.Strips;

/// <summary>All copies of the pieces of a strip, each with one or two ways of lying, and the ranks of their sizes.</summary>
/// <remarks>
/// A copy has <see cref="Ways"/> ways; way 0 is as it comes, way 1 turned. A way that cannot be (square, may not turn, wider than the strip)
/// has rank <see cref="NoRank"/> in both tables, which no gap reaches.
/// </remarks>
internal sealed class StripPieces
{
    internal StripPieces(IReadOnlyList<RectPiece> pieces, int stripWidth)
    {
        Ways = pieces.Any(p => p.MayTurn && p.Width != p.Height) ? 2 : 1;
        Piece = [.. pieces.SelectMany((p, i) => Enumerable.Repeat(i, p.Copies))];
        Width = new int[Count * Ways];
        Height = new int[Count * Ways];
        for (int c = 0; c < Count; c++)
        {
            RectPiece p = pieces[Piece[c]];
            (Width[c * Ways], Height[c * Ways]) = p.Width <= stripWidth ? (p.Width, p.Height) : (0, 0);
            if (Ways == 2 && p.MayTurn && p.Width != p.Height && p.Height <= stripWidth)
                (Width[(c * 2) + 1], Height[(c * 2) + 1]) = (p.Height, p.Width);
            Area += p.Area;
        }

        int most = (int)Math.Max(64, MostWords / (((long)Count * Ways / 64) + 1));
        (Widths, WidthRank) = Ranks(Width, most);
        (Heights, HeightRank) = Ranks(Height, most);
    }

    internal const int NoRank = int.MaxValue;

    /// <summary>Words of one table of rows at most; beyond it sizes share ranks, and a piece counts as the largest of its rank where it is looked for.</summary>
    private const long MostWords = 2_000_000;

    /// <summary>1 where nothing may turn, else 2.</summary>
    internal int Ways { get; }

    /// <summary>How many copies of all pieces.</summary>
    internal int Count => Piece.Length;

    /// <summary>Area of all copies.</summary>
    internal long Area { get; }

    /// <summary>Piece of each copy.</summary>
    internal int[] Piece { get; }

    /// <summary>Width of each way of each copy; 0 where the way cannot be.</summary>
    internal int[] Width { get; }

    /// <summary>Height of each way of each copy; 0 where the way cannot be.</summary>
    internal int[] Height { get; }

    /// <summary>Different widths, ascending; of very many pieces only some of them, the largest always.</summary>
    internal int[] Widths { get; }

    /// <summary>Different heights, ascending, in the same way.</summary>
    internal int[] Heights { get; }

    /// <summary>Place in <see cref="Widths"/> of the least one that is not under the way's width.</summary>
    internal int[] WidthRank { get; }

    /// <summary>Place in <see cref="Heights"/> of the least one that is not under the way's height.</summary>
    internal int[] HeightRank { get; }

    /// <summary>How many of the ascending values are at most a value.</summary>
    internal static int UpTo(int[] values, int value)
    {
        int low = 0, high = values.Length;
        while (low < high)
        {
            int middle = (low + high) >> 1;
            if (values[middle] <= value)
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }

    private static (int[] Values, int[] Rank) Ranks(int[] sizes, int most)
    {
        int[] all = [.. sizes.Where(s => s > 0).Distinct().Order()];
        int[] values = all.Length <= most ? all : [.. Enumerable.Range(1, most).Select(i => all[(int)((long)i * all.Length / most) - 1])];
        return (values, [.. sizes.Select(s => s > 0 ? UpTo(values, s - 1) : NoRank)]);
    }
}
