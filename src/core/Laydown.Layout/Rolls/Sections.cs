using Laydown.Layout.Packing;

namespace Laydown.Layout.Rolls;

/// <summary>A roll as a row of sections: each as long as the piece that opens it, filled by a tree of cuts.</summary>
internal static class Sections
{
    /// <summary>All copies of the order, section after section.</summary>
    /// <param name="types">Types; each fits the width one way or the other.</param>
    /// <param name="order">Order of packing.</param>
    /// <param name="width">Width of the strip, µm.</param>
    /// <param name="lying">Whether the piece that opens a section lies along the width where it may.</param>
    /// <param name="split">How rests are cut.</param>
    /// <param name="cancellation">Ends the work.</param>
    internal static IReadOnlyList<Spot> Fill(
        IReadOnlyList<PieceType> types, IReadOnlyList<Entry> order, int width, bool lying, Split split, CancellationToken cancellation)
    {
        int[] left = [.. order.Select(e => e.Copies)];
        List<Spot> spots = [];
        int from = 0;
        for (int first = 0; first < left.Length; first++)
            while (left[first] > 0)
            {
                cancellation.ThrowIfCancellationRequested();
                int length = Opening(types[order[first].Type], width, lying);
                int[] used = new int[left.Length];
                List<Spot> section = SheetFill.Place(types, order, left, new GuillotineNodes(width, length, Fit.ShortRest, split), used);
                for (int i = 0; i < left.Length; i++)
                    left[i] -= used[i];

                // Every section is at least as long as its longest piece and no longer.
                spots.AddRange(section.Select(s => s with { Place = s.Place with { Y = s.Place.Y + from } }));
                from += section.Max(s => s.Place.Top);
            }

        return spots;
    }

    private static int Opening(PieceType type, int width, bool lying)
    {
        if (!type.MayTurn)
            return type.H;

        (int shortSide, int longSide) = (Math.Min(type.W, type.H), Math.Max(type.W, type.H));
        return lying && longSide <= width ? shortSide : shortSide <= width ? longSide : shortSide;
    }
}
