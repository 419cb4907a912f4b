using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Drawings;

/// <summary>Draws a stack as a section through sheet and ink: the viewer above, the lamp below, each layer with its number in print order.</summary>
public static class CrossSection
{
    private const double Width = 760, Left = 96, Body = 300, Words = Left + Body + 22, Row = 30, SheetRow = 54;

    /// <summary>The section as SVG text, 760 units wide; ink is drawn far thicker than it is, and the drawing says so.</summary>
    /// <param name="stack">The layers.</param>
    /// <param name="stock">The sheet between the faces.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Draw(LayerStack stack, Stock stock)
    {
        ArgumentNullException.ThrowIfNull(stack);
        ArgumentNullException.ThrowIfNull(stock);
        IReadOnlyList<(Layer Layer, int Number)> numbered = [.. stack.Layers.Select((l, i) => (l, i + 1))];
        IReadOnlyList<(Layer Layer, int Number)> first = [.. numbered.Where(l => l.Layer.Face is SheetFace.First).Reverse()];
        IReadOnlyList<(Layer Layer, int Number)> second = [.. numbered.Where(l => l.Layer.Face is SheetFace.Second)];
        double height = 92 + (Row * stack.Layers.Count) + SheetRow + (stack.Lit ? 78 : 34);
        SvgPaper paper = new(Width, height, Invariant($"Layers on {stock.Name}"), Describe(first, second, stack, stock));

        double y = Viewer(paper);
        y = Face(paper, first, y, "first surface");
        y = Sheet(paper, stock, y);
        y = Face(paper, second, y, "second surface");
        Light(paper, stack, stock, 62, y);
        paper.Text(Width - 8, height - 8, "ink drawn far thicker than it is; numbers: order of printing", Lettering.Quiet, 11, "end");
        return paper.Done();
    }

    private static double Viewer(SvgPaper paper)
    {
        const double x = Left + (Body / 2), y = 26;
        paper.Path(Invariant($"M{x - 19} {y}Q{x} {y - 19} {x + 19} {y}Q{x} {y + 19} {x - 19} {y}Z"), Pen.Edge, onPaper: true);
        paper.Solid(Invariant($"M{x - 5} {y}a5 5 0 1 0 10 0a5 5 0 1 0 -10 0Z"), accent: true);
        paper.Text(Words, y + 5, "you stand here", Lettering.Accent, 14);
        return 66;
    }

    private static double Face(SvgPaper paper, IReadOnlyList<(Layer Layer, int Number)> layers, double from, string name)
    {
        double y = from;
        foreach ((Layer layer, int number) in layers)
        {
            Band(paper, layer, y);
            paper.Number(Left - 18, y + (Row / 2), number);
            paper.Line(Left + Body + 3, y + (Row / 2), Words - 5, y + (Row / 2), Pen.Hair);
            paper.Text(Words, y + 14, LayerWords.Name(layer), Lettering.Name);
            paper.Text(Words, y + 27, LayerWords.Detail(layer), Lettering.Quiet, 11.5);
            y += Row;
        }

        if (layers.Count > 0)
        {
            paper.Path(Invariant($"M48 {from + 2:0.##}h-6V{y - 2:0.##}h6"), Pen.Hair);
            paper.Text(34, (from + y) / 2, name, Lettering.Quiet, layers.Count > 2 ? 11.5 : 9.5, "middle", -90);
        }

        return y;
    }

    private static void Band(SvgPaper paper, Layer layer, double y)
    {
        paper.Blank(Left, y, Body, Row);
        switch (layer.Group)
        {
            case InkGroup.Colour:
                paper.Hatch(Left, y, Body, Row, 45, 4);
                break;
            case InkGroup.White:
                paper.Dots(Left, y, Body, Row, 7);
                break;
            case InkGroup.Clear:
                paper.Hatch(Left, y, Body, Row, 0, 7, Pen.Faint);
                break;
            default:
                paper.Hatch(Left, y, Body, Row, 45, 3);
                paper.Hatch(Left, y, Body, Row, 135, 3);
                break;
        }

        paper.Rect(Left, y, Body, Row, Pen.Edge);
        if (layer.Group is InkGroup.Colour)
            Reading(paper, y, layer.Mirrored);
    }

    // A letter as it lies on the sheet when it comes off the press: it reads the right way round, or not.
    private static void Reading(SvgPaper paper, double y, bool mirrored)
    {
        const double x = Left + (Body / 2);
        double way = mirrored ? -1 : 1;
        paper.Blank(x - 15, y + 4, 30, Row - 8);
        paper.Rect(x - 15, y + 4, 30, Row - 8, Pen.Hair);
        paper.Path(Invariant($"M{x - (4 * way):0.#} {y + 22:0.#}v-14h{4 * way:0.#}q{5 * way:0.#} 0 {5 * way:0.#} 4q0 4 {-5 * way:0.#} 4h{-4 * way:0.#}m{4 * way:0.#} 0l{5 * way:0.#} 6"), Pen.Edge);
    }

    private static double Sheet(SvgPaper paper, Stock stock, double y)
    {
        paper.Blank(Left, y, Body, SheetRow);
        switch (stock.Light)
        {
            case SheetLight.Opaque:
                paper.Hatch(Left, y, Body, SheetRow, 135, 9);
                break;
            case SheetLight.Opal:
                paper.Hatch(Left, y, Body, SheetRow, 90, 12, Pen.Faint);
                break;
            default:
                // The two strokes by which glass has always been drawn.
                paper.Path(Invariant($"M{Left + 40} {y + 38}l24 -24m-10 30l32 -32M{Left + 210} {y + 38}l24 -24m-10 30l32 -32"), Pen.Hair);
                break;
        }

        paper.Rect(Left, y, Body, SheetRow, Pen.Edge);
        paper.Rect(Left - 2, y - 1.2, Body + 4, SheetRow + 2.4, Pen.Edge);
        Sizing.Upright(paper, Left - 14, y, y + SheetRow, Sizing.Length(stock.ThicknessMm));
        paper.Line(Left + Body + 3, y + (SheetRow / 2), Words - 5, y + (SheetRow / 2), Pen.Hair);
        paper.Text(Words, y + 24, stock.Name, Lettering.Name);
        paper.Text(Words, y + 40, Invariant($"{stock.Material}, {LayerWords.Light(stock.Light)}, {stock.ThicknessMm:0.##} ± {stock.ThicknessToleranceMm:0.##} mm"), Lettering.Quiet, 11.5);
        return y + SheetRow;
    }

    private static void Light(SvgPaper paper, LayerStack stack, Stock stock, double top, double bottom)
    {
        // Room light falls in from the viewer's side and comes back; lamp light goes through from behind.
        Sizing.Arrow(paper, Left + 24, top - 40, Left + 52, top - 4);
        Sizing.Arrow(paper, Left + 56, top - 4, Left + 84, top - 40);
        paper.Text(Left + 20, top - 44, "room light", Lettering.Quiet, 11, "middle");
        if (!stack.Lit)
            return;

        double lamp = bottom + 40;
        for (int i = 0; i < 6; i++)
        {
            double x = Left + 25 + (i * 50);
            paper.Rect(x - 8, lamp, 16, 7, Pen.Edge, onPaper: true);
            Sizing.Arrow(paper, x, lamp - 3, x, bottom + 5, accent: true);
        }

        paper.Line(Left, lamp + 12, Left + Body, lamp + 12, Pen.Edge);
        paper.Text(Words, lamp + 9, "lamp", Lettering.Accent, 14);
        paper.Text(Words + 44, lamp + 9, Invariant($"bare sheet lets {stock.TransmittancePercent:0.#} % through"), Lettering.Quiet, 11.5);
    }

    private static string Describe(
        IReadOnlyList<(Layer Layer, int Number)> first, IReadOnlyList<(Layer Layer, int Number)> second, LayerStack stack, Stock stock)
    {
        IEnumerable<string> Words(IEnumerable<(Layer Layer, int Number)> layers) =>
            layers.Select(l => Invariant($"{LayerWords.Name(l.Layer)} (printed as number {l.Number}, {LayerWords.Detail(l.Layer)})"));
        return "From the viewer inward: " + string.Join("; ", [
            .. Words(first), Invariant($"sheet: {stock.Name}, {stock.ThicknessMm:0.##} mm, {LayerWords.Light(stock.Light)}"), .. Words(second)])
            + (stack.Lit ? "; behind it a lamp." : "; no lamp behind.");
    }
}
