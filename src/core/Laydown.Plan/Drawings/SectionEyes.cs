namespace Laydown.Plan.Drawings;

/// <summary>The eye of a viewer, with the words that say who it is.</summary>
internal static class SectionEyes
{
    /// <summary>Where the eye stands over the bands.</summary>
    internal const double Across = SectionBand.Left + SectionBand.Window + (SectionBand.WindowBreadth / 2);

    /// <summary>Draws the eye of a viewer who looks down or up into the piece.</summary>
    internal static void Draw(SvgPaper paper, double left, double y, string words, bool down)
    {
        double x = left + Across, look = down ? 2 : -2;
        paper.Path(Invariant($"M{x - 19} {y}Q{x} {y - 17} {x + 19} {y}Q{x} {y + 17} {x - 19} {y}Z"), Pen.Edge, onPaper: true);
        paper.Path(Invariant($"M{x - 7.5} {y + look}a7.5 7.5 0 1 0 15 0a7.5 7.5 0 1 0 -15 0Z"), Pen.Accent);
        paper.Solid(Invariant($"M{x - 3.5} {y + look}a3.5 3.5 0 1 0 7 0a3.5 3.5 0 1 0 -7 0Z"), accent: true);
        paper.Text(left + SectionBand.Left + SectionBand.Breadth + 10, y + 5, words, Lettering.Accent, 13.5);
    }
}
