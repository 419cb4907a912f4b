using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Drawings;

/// <summary>One band of a section: a layer, or the sheet.</summary>
internal sealed class SectionBand
{
    /// <summary>Left edge and width of the bands within their panel; from <see cref="Window"/> on a mask has its window.</summary>
    internal const double Left = 44, Breadth = 112, Window = 76, WindowBreadth = 26;

    private const double WordsAt = Left + Breadth + 10, Line = 14.5, LeastLayer = 36, LeastAlone = 76, LeastSheet = 58;

    private SectionBand(Layer? layer, int number, Stock stock, SectionWords words, double top, double least)
    {
        (Layer, Number, Stock, Top) = (layer, number, stock, top);
        Name = layer is null ? SectionWords.Sheet(stock) : LayerWords.Name(layer);
        Details = layer is null ? SectionWords.SheetDetail(stock) : SectionWords.Detail(layer);
        Role = words.Role(number - 1);
        Bottom = top + Math.Max(least, (Line * (1 + Details.Count + Role.Count)) + 8);
    }

    /// <summary>The layer, or null for the sheet.</summary>
    internal Layer? Layer { get; }

    /// <summary>The sheet's stock.</summary>
    internal Stock Stock { get; }

    /// <summary>Place in print order from 1; 0 for the sheet.</summary>
    internal int Number { get; }

    /// <summary>Upper edge.</summary>
    internal double Top { get; }

    /// <summary>Lower edge.</summary>
    internal double Bottom { get; }

    private string Name { get; }

    private IReadOnlyList<string> Details { get; }

    private IReadOnlyList<string> Role { get; }

    private double High => Bottom - Top;

    /// <summary>All bands from the front viewer's eye inward, the first from <paramref name="from"/> on.</summary>
    internal static IEnumerable<SectionBand> Stacked(LayerStack stack, Stock stock, SectionWords words, double from)
    {
        double top = from;
        foreach (int i in Build.StackSight.Path(stack, Viewer.Front))
        {
            // A face with one layer still needs room for its name at the side.
            double least = i < 0 ? LeastSheet : stack.On(stack.Layers[i].Face).Count() == 1 ? LeastAlone : LeastLayer;
            SectionBand band = new(i < 0 ? null : stack.Layers[i], i + 1, stock, words, top, least);
            top = band.Bottom;
            yield return band;
        }
    }

    /// <summary>Whether the band has ink at a place across it, counted from its left edge.</summary>
    internal bool HasInkAt(double x) => Layer is not null && (!IsMasked || x is < Window or > Window + WindowBreadth);

    private bool IsMasked => Layer is { Group: not InkGroup.Colour, IsFlood: false } && Layer.Source is not (WhiteSource.UnderImage or WhiteSource.Inverse);

    /// <summary>The band in words.</summary>
    internal string Describe() => Layer is null
        ? Invariant($"sheet: {Stock.Name}, {string.Join(' ', Details)}")
        : Invariant($"{Name} (printed as number {Number}, {(Layer.Face == SheetFace.First ? "first" : "second")} surface, {string.Join(' ', Details)}{(Role.Count > 0 ? ": " + string.Join(' ', Role) : "")})");

    /// <summary>Draws band, number and words.</summary>
    internal void Draw(SvgPaper paper, double left)
    {
        double x = left + Left;
        paper.Blank(x, Top, Breadth, High);
        if (Layer is null)
            Sheet(paper, x);
        else
            Ink(paper, x);
        paper.Line(x + Breadth + 2, Top + 10, left + WordsAt - 3, Top + 10, Pen.Hair);
        double y = Top + 14.5;
        paper.Text(left + WordsAt, y, Name, Lettering.Name, 13.5);
        foreach (string line in Details)
            paper.Text(left + WordsAt, y += Line, line, Lettering.Quiet, 12);
        foreach (string line in Role)
            paper.Text(left + WordsAt, y += Line, line, Lettering.Accent, 12);
    }

    private void Ink(SvgPaper paper, double x)
    {
        // A mask leaves a window, a choke the rim: there the band is empty.
        double inset = Layer!.ChokeMm > 0 && !IsMasked ? 5 : 0;
        Fill(paper, x + inset, (IsMasked ? Window : Breadth - inset) - inset);
        if (IsMasked)
            Fill(paper, x + Window + WindowBreadth, Breadth - Window - WindowBreadth);

        paper.Rect(x, Top, Breadth, High, Pen.Edge);
        paper.Number(x - 17, (Top + Bottom) / 2, Number);
        if (Layer.Group == InkGroup.Colour)
            Letter(paper, x + 6, Layer.Mirrored);
    }

    private void Fill(SvgPaper paper, double x, double breadth)
    {
        switch (Layer!.Group)
        {
            case InkGroup.Colour:
                paper.Hatch(x, Top, breadth, High, Layer.ArtworkPage == 1 ? 45 : 135, 4.5);
                break;
            case InkGroup.White:
                paper.Dots(x, Top, breadth, High, 6);
                break;
            case InkGroup.Clear:
                paper.Hatch(x, Top, breadth, High, 0, 8, Pen.Faint);
                break;
            default:
                paper.Hatch(x, Top, breadth, High, 45, 2.4);
                paper.Hatch(x, Top, breadth, High, 135, 2.4);
                break;
        }

        if (breadth < Breadth)
            paper.Rect(x, Top, breadth, High, Pen.Hair);
    }

    // A letter as it lies on the sheet, seen from the face it is printed on: it reads the right way round, or not.
    private void Letter(SvgPaper paper, double x, bool mirrored)
    {
        double way = mirrored ? -1 : 1, y = (Top + Bottom) / 2;
        paper.Blank(x, y - 12, 22, 24);
        paper.Rect(x, y - 12, 22, 24, Pen.Hair);
        paper.Path(Invariant($"M{x + 11 - (4 * way):0.#} {y + 7.5:0.#}v-15h{4 * way:0.#}q{5 * way:0.#} 0 {5 * way:0.#} 4.3q0 4.3 {-5 * way:0.#} 4.3h{-4 * way:0.#}m{4 * way:0.#} 0l{5 * way:0.#} 6.4"), Pen.Edge);
    }

    private void Sheet(SvgPaper paper, double x)
    {
        switch (Stock.Light)
        {
            case SheetLight.Opaque:
                paper.Hatch(x, Top, Breadth, High, 135, 8);
                break;
            case SheetLight.Opal:
                paper.Hatch(x, Top, Breadth, High, 90, 10, Pen.Faint);
                break;
            default:
                // The two strokes by which glass has always been drawn.
                paper.Path(Invariant($"M{x + 8} {Bottom - 14}l18 -18m-7 24l26 -26"), Pen.Hair);
                break;
        }

        paper.Rect(x, Top, Breadth, High, Pen.Edge);
        paper.Rect(x - 2, Top - 1.2, Breadth + 4, High + 2.4, Pen.Edge);
        paper.Text(x - 17, (Top + Bottom) / 2, "sheet", Lettering.Quiet, 11, "middle", -90);
    }
}
