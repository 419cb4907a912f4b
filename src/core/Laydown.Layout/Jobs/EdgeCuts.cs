using Laydown.Measures;

namespace Laydown.Layout.Jobs;

/// <summary>Tells whether cuts from edge to edge take a sheet apart into its pieces.</summary>
internal static class EdgeCuts
{
    /// <summary>Whether there are such cuts.</summary>
    /// <param name="boxes">Pieces as they lie.</param>
    /// <param name="kerfMm">What a cut needs between two pieces, mm.</param>
    internal static bool Part(IReadOnlyList<RectMm> boxes, double kerfMm)
    {
        // Parts still to be cut; a stack, since a saw's tree of cuts can be as deep as there are pieces.
        Stack<IReadOnlyList<RectMm>> open = new([boxes]);
        while (open.TryPop(out IReadOnlyList<RectMm>? part))
        {
            if (part.Count < 2)
                continue;
            IReadOnlyList<IReadOnlyList<RectMm>> upright = Split(part, r => r.XMm, r => r.RightMm, kerfMm);
            IReadOnlyList<IReadOnlyList<RectMm>> parts = upright.Count > 1 ? upright : Split(part, r => r.YMm, r => r.TopMm, kerfMm);
            if (parts.Count < 2)
                return false;
            foreach (IReadOnlyList<RectMm> one in parts)
                open.Push(one);
        }

        return true;
    }

    // A cut goes wherever no piece lies across.
    private static IReadOnlyList<IReadOnlyList<RectMm>> Split(IReadOnlyList<RectMm> part, Func<RectMm, double> from, Func<RectMm, double> to, double kerfMm)
    {
        List<IReadOnlyList<RectMm>> parts = [];
        List<RectMm> here = [];
        double end = double.MinValue;
        foreach (RectMm box in part.OrderBy(from))
        {
            if (here.Count > 0 && from(box) >= end + kerfMm)
            {
                parts.Add(here);
                here = [];
            }

            here.Add(box);
            end = Math.Max(end, to(box));
        }

        parts.Add(here);
        return parts;
    }
}
