using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Drawings;

/// <summary>Draws a stack as a section through sheet and ink: who stands where, each layer with its number in print order, and the light that matters.</summary>
/// <remarks>Ink is drawn far thicker than it is, and the drawing says so. By day the room's light comes back to the eye; lit, the lamp's comes through.</remarks>
public static class CrossSection
{
    private const double Between = 20;

    /// <summary>Both lights beside each other where a lamp stands behind the piece, else the day alone; for paper.</summary>
    /// <param name="stack">The layers.</param>
    /// <param name="stock">The sheet between the faces.</param>
    /// <returns>SVG text, 740 units wide with a lamp, 360 without.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Draw(LayerStack stack, Stock stock)
    {
        ArgumentNullException.ThrowIfNull(stack);
        ArgumentNullException.ThrowIfNull(stock);
        if (!stack.Lit)
            return Draw(stack, stock, lit: false);

        SectionPanel day = new(stack, stock, lit: false), lamp = new(stack, stock, lit: true);
        SvgPaper paper = new(
            (2 * SectionPanel.Width) + Between, Math.Max(day.Height, lamp.Height), Invariant($"Layers on {stock.Name}, by day and with the lamp on"),
            day.Describe() + " " + lamp.Describe());
        day.Draw(paper, 0);
        lamp.Draw(paper, SectionPanel.Width + Between);
        return paper.Done();
    }

    /// <summary>One light alone; narrow enough for a telephone.</summary>
    /// <param name="stack">The layers.</param>
    /// <param name="stock">The sheet between the faces.</param>
    /// <param name="lit">Whether the lamp is on; else, and where there is none, it is day.</param>
    /// <returns>SVG text, 360 units wide.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Draw(LayerStack stack, Stock stock, bool lit)
    {
        ArgumentNullException.ThrowIfNull(stack);
        ArgumentNullException.ThrowIfNull(stock);
        bool lamp = lit && stack.Lit;
        SectionPanel panel = new(stack, stock, lamp);
        SvgPaper paper = new(
            SectionPanel.Width, panel.Height, Invariant($"Layers on {stock.Name}, {(lamp ? "with the lamp on" : "by day")}"), panel.Describe());
        panel.Draw(paper, 0);
        return paper.Done();
    }
}
