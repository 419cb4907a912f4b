using System.Text;
using Laydown.Artwork.Pages;
using Laydown.Measures;

namespace Laydown.Plan.Drawings;

/// <summary>Draws the findings of one page as numbered boxes, to be laid over its preview.</summary>
public static class PageFindings
{
    private const double Width = 1000;

    /// <summary>
    /// The boxes as SVG text over the whole media box, see-through, without a size of its own: it fills what holds it. Trim and bleed box are drawn too.
    /// </summary>
    /// <param name="page">The page.</param>
    /// <param name="findings">All findings of the file, in the order of the list beside it; the number in a box is the place in that list from 1.</param>
    /// <remarks>Stop: full line; warn: broken line; note: dotted line. Every line has a pale one under it, so that it shows on any picture.</remarks>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Draw(ArtworkPage page, IReadOnlyList<Finding> findings)
    {
        ArgumentNullException.ThrowIfNull(page);
        ArgumentNullException.ThrowIfNull(findings);
        double scale = Width / Math.Max(page.MediaMm.WidthMm, 1e-6), height = Math.Max(1, page.MediaMm.HeightMm * scale);
        IReadOnlyList<(Finding Finding, int Number)> placed = [.. findings.Select((f, i) => (f, i + 1)).Where(f => f.f.Page == page.Number && f.f.Place is not null)];
        SvgPaper paper = new(Width, height, Invariant($"Findings on page {page.Number}"), Describe(placed));

        PageBox(paper, page.BleedMm, scale, height, "4 4");
        PageBox(paper, page.TrimMm, scale, height, "none");
        foreach ((Finding finding, int number) in placed)
            Box(paper, finding, number, scale, height);
        return paper.Done(fixedSize: false);
    }

    private static void PageBox(SvgPaper paper, RectMm box, double scale, double height, string dashes) =>
        paper.Raw(Lines(Rect(box, scale, height, 0), dashes, 1, accent: false));

    private static void Box(SvgPaper paper, Finding finding, int number, double scale, double height)
    {
        (double x, double y, double w, double h) = Rect(finding.Place!.Value, scale, height, 4);
        string dashes = finding.Severity switch { Severity.Stop => "none", Severity.Warn => "9 5", _ => "2 4" };
        paper.Raw(Lines((x, y, w, h), dashes, 2.4, accent: true));

        // The number sits on the box's upper left corner, or as near to it as the page allows.
        double cx = Math.Clamp(x, 20, Width - 20), cy = Math.Clamp(y, 20, Math.Max(20, height - 20));
        paper.Raw(Invariant($"<circle class=\"ld-accent ld-paper\" cx=\"{cx:0.##}\" cy=\"{cy:0.##}\" r=\"18\" fill=\"#ffffff\" stroke=\"#00566b\" stroke-width=\"2.4\"/>\n"));
        paper.Text(cx, cy + 7, Invariant($"{number}"), Lettering.Accent, number > 9 ? 18 : 21, "middle");
    }

    private static (double X, double Y, double W, double H) Rect(RectMm place, double scale, double height, double grow)
    {
        double x = Math.Clamp((place.XMm * scale) - grow, 1, Width - 2), right = Math.Clamp((place.RightMm * scale) + grow, x + 1, Width - 1);
        double y = Math.Clamp(height - (place.TopMm * scale) - grow, 1, Math.Max(1, height - 2));
        double low = Math.Clamp(height - (place.YMm * scale) + grow, y + 1, Math.Max(y + 1, height - 1));
        return (x, y, right - x, low - y);
    }

    private static string Lines((double X, double Y, double W, double H) r, string dashes, double width, bool accent)
    {
        string place = Invariant($"x=\"{r.X:0.##}\" y=\"{r.Y:0.##}\" width=\"{r.W:0.##}\" height=\"{r.H:0.##}\" fill=\"none\"");
        return new StringBuilder()
            .Append(Invariant($"<rect {place} stroke=\"#ffffff\" stroke-opacity=\"0.85\" stroke-width=\"{width + 2.2:0.##}\"/>\n"))
            .Append(Invariant($"<rect class=\"{(accent ? "ld-accent" : "ld-trim")}\" {place} stroke=\"{(accent ? "#00566b" : "#161616")}\" "))
            .Append(Invariant($"stroke-width=\"{width:0.##}\"{(dashes == "none" ? "" : Invariant($" stroke-dasharray=\"{dashes}\""))}/>\n"))
            .ToString();
    }

    private static string Describe(IReadOnlyList<(Finding Finding, int Number)> placed) => placed.Count == 0
        ? "No finding has a place on this page."
        : string.Join(' ', placed.Select(p => Invariant($"{p.Number}: {p.Finding.What}")));
}
