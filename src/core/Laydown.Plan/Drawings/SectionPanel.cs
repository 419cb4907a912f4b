using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Drawings;

/// <summary>One panel of a section: the piece in one light.</summary>
internal sealed class SectionPanel
{
    /// <summary>Width, units.</summary>
    internal const double Width = 360;

    private const double Top = 34, Eye = 66, Behind = 72, Foot = 34;

    private readonly LayerStack stack;
    private readonly bool lit;
    private readonly IReadOnlyList<SectionBand> bands;
    private readonly IReadOnlyList<string> seen;
    private readonly bool both;
    private readonly double from;

    /// <summary>A panel of a stack by day or lit.</summary>
    internal SectionPanel(LayerStack stack, Stock stock, bool lit)
    {
        (this.stack, this.lit, both) = (stack, lit, stack.SeenFrom == SeenFrom.BothSides);
        SectionWords words = new(stack, stock, lit);
        seen = words.Seen();
        from = Top + Eye;
        bands = [.. SectionBand.Stacked(stack, stock, words, from)];
    }

    /// <summary>Height, units.</summary>
    internal double Height => bands[^1].Bottom + BehindHeight + (15 * seen.Count) + Foot;

    private double BehindHeight => both ? Eye + 6 : stack.Lit ? Behind : 26;

    /// <summary>The panel in words, for those who cannot see it.</summary>
    internal string Describe() => Invariant($"{(lit ? "Lamp on" : "By day")}, from the viewer inward: ")
        + string.Join("; ", bands.Select(b => b.Describe()))
        + (both ? "; behind it a second viewer. " : stack.Lit ? "; behind it a lamp. " : "; no lamp behind. ")
        + string.Join(' ', seen);

    /// <summary>Draws it with its left edge at <paramref name="left"/>.</summary>
    internal void Draw(SvgPaper paper, double left)
    {
        double bottom = bands[^1].Bottom;
        paper.Text(left + 10, 21, lit ? "Lamp on, room dim" : stack.Lit ? "By day, lamp off" : "By the light of the room", Lettering.Name, 15);
        SectionEyes.Draw(paper, left, Top + 20, both ? "you stand here, in front" : "you stand here", down: true);
        foreach (SectionBand band in bands)
            band.Draw(paper, left);
        Faces(paper, left);
        if (both)
            SectionEyes.Draw(paper, left, bottom + Eye - 22, "and you here, at the back", down: false);
        else if (stack.Lit)
            SectionLight.Lamp(paper, left, bottom + 44, lit);
        SectionLight light = new(paper, left, bands);
        if (lit)
        {
            light.Through(bottom + 38, from, Top + 34);
        }
        else
        {
            light.Back(from, outward: -1);
            if (both)
                light.Back(bottom, outward: 1);
        }

        Write(paper, left, bottom + BehindHeight + 12);
    }

    private void Faces(SvgPaper paper, double left)
    {
        foreach (SheetFace face in Enum.GetValues<SheetFace>())
        {
            List<SectionBand> on = [.. bands.Where(b => b.Layer?.Face == face)];
            if (on.Count == 0)
                continue;
            (double top, double bottom) = (on[0].Top, on[^1].Bottom);
            paper.Text(left + 12, (top + bottom) / 2, face == SheetFace.First ? "first surface" : "second surface", Lettering.Quiet, 9.5, "middle", -90);
        }
    }

    private void Write(SvgPaper paper, double left, double y)
    {
        foreach (string line in seen)
        {
            paper.Text(left + 10, y, line, Lettering.Word, 12.5);
            y += 15;
        }

        paper.Text(left + 10, y + 6, "Numbers: order of printing. Not to scale:", Lettering.Quiet, 11);
        paper.Text(left + 10, y + 20, "ink is drawn far thicker than it is.", Lettering.Quiet, 11);
    }
}
