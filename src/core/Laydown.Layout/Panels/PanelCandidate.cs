using Laydown.Measures;

namespace Laydown.Layout.Panels;

/// <summary>One way to part a graphic, to be compared with others.</summary>
/// <param name="Turned">Whether panels lie on their side.</param>
/// <param name="Parts">Parts by column from the left, rows from the bottom.</param>
/// <param name="Cost">Cost of the seams.</param>
/// <param name="Spread">Spread of the widths.</param>
internal sealed record PanelCandidate(bool Turned, IReadOnlyList<IReadOnlyList<RectMm>> Parts, long Cost, long Spread)
{
    private int Count => Parts.Sum(c => c.Count);

    private double MediaMm => Parts.Sum(c => c.Sum(p => Turned ? p.WidthMm : p.HeightMm));

    /// <summary>Whether it has fewer panels, else needs less length of stock, else has cheaper seams, else less spread.</summary>
    internal bool IsBetterThan(PanelCandidate? other) =>
        other is null || (Count, Math.Round(MediaMm, 3), Cost, Spread).CompareTo((other.Count, Math.Round(other.MediaMm, 3), other.Cost, other.Spread)) < 0;
}
