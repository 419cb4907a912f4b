using Laydown.Layout.Packing;

namespace Laydown.Layout.Rolls;

/// <summary>A roll as a row of sections: each as long as the piece that opens it, filled by a tree of cuts.</summary>
internal static class Sections
{
    /// <summary>All copies of the order, section after section; those that would lie beyond what is reckoned with are left out.</summary>
    /// <param name="types">Types; each fits a section one way or the other.</param>
    /// <param name="order">Order of packing.</param>
    /// <param name="most">Width of the strip and greatest length of a section.</param>
    /// <param name="lying">Whether the piece that opens a section lies along the width where it may.</param>
    /// <param name="split">How rests are cut.</param>
    internal static IReadOnlyList<Spot> Fill(IReadOnlyList<PieceType> types, IReadOnlyList<Entry> order, SectionSize most, bool lying, Split split)
    {
        int[] left = [.. order.Select(e => e.Copies)];
        List<Spot> spots = [];
        int from = 0;
        for (int first = 0; first < left.Length; first++)
            while (left[first] > 0)
            {
                int length = Opening(types[order[first].Type], most, lying);
                int[] used = new int[left.Length];
                List<Spot> section = SheetFill.Place(types, order, left, new GuillotineNodes(most.Width, length, Fit.ShortRest, split), used);
                for (int i = 0; i < left.Length; i++)
                    left[i] -= used[i];

                // Every section is at least as long as its longest piece and no longer.
                int start = from;
                spots.AddRange(section.Select(s => s with { Place = s.Place with { Y = s.Place.Y + start } }));
                from += section.Max(s => s.Place.Top);
                if (from > Strips.StripSearch.Limit)
                    return spots;
            }

        return spots;
    }

    private static int Opening(PieceType type, SectionSize most, bool lying)
    {
        bool asItComes = type.W <= most.Width && type.H <= most.Longest;
        bool turned = type.MayTurn && type.H <= most.Width && type.W <= most.Longest;
        if (asItComes && turned)
            return lying ? Math.Min(type.W, type.H) : Math.Max(type.W, type.H);
        return asItComes ? type.H : type.W;
    }
}
