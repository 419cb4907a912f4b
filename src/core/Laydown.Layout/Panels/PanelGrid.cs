using Laydown.Measures;

namespace Laydown.Layout.Panels;

/// <summary>Finds column and row of panels from where they lie.</summary>
internal static class PanelGrid
{
    /// <summary>The panels, in the order of their parts.</summary>
    internal static IReadOnlyList<Panel> Of(IReadOnlyList<RectMm> parts)
    {
        // Parts of one column were computed from one number, so they are told apart at a hundredth of a millimetre.
        List<long> columns = [.. parts.Select(Left).Distinct().Order()];
        return [.. parts.Select((part, i) => new Panel(
            i + 1, columns.IndexOf(Left(part)) + 1, 1 + parts.Count(p => Left(p) == Left(part) && p.YMm < part.YMm), part))];
    }

    private static long Left(RectMm part) => (long)Math.Round(part.XMm * 100);
}
