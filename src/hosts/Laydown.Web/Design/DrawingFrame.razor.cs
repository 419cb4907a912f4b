using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Design;

/// <summary>A drawing to scale with its title, how to read it, and where wanted its sizes beside it.</summary>
public sealed partial class DrawingFrame
{
    private const string StyleStart = "<style>";
    private const string StyleEnd = "</style>";
    private string drawing = "";

    /// <summary>What is drawn.</summary>
    [Parameter, EditorRequired]
    public string Title { get; set; } = "";

    /// <summary>How to read it: scale, direction of feed, side.</summary>
    [Parameter]
    public string Note { get; set; } = "";

    /// <summary>The drawing as SVG text, made by the product itself from its records; never text of a customer's file.</summary>
    [Parameter, EditorRequired]
    public string Svg { get; set; } = "";

    /// <summary>Sizes in words and figures beside the drawing; null for none.</summary>
    [Parameter]
    public RenderFragment? Aside { get; set; }

    /// <inheritdoc/>
    protected override void OnParametersSet() => drawing = WithoutStyle(Svg);

    // A drawing brings its colours for paper; here the page's own apply, and styles inside a page are not allowed.
    private static string WithoutStyle(string svg)
    {
        int start = svg.IndexOf(StyleStart, StringComparison.Ordinal);
        int end = svg.IndexOf(StyleEnd, StringComparison.Ordinal);
        return start < 0 || end < start ? svg : svg.Remove(start, end + StyleEnd.Length - start);
    }
}
