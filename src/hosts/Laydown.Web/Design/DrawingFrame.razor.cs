using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Design;

/// <summary>A drawing to scale with its title and how to read it.</summary>
public sealed partial class DrawingFrame
{
    /// <summary>What is drawn.</summary>
    [Parameter, EditorRequired]
    public string Title { get; set; } = "";

    /// <summary>How to read it: scale, direction of feed, side.</summary>
    [Parameter]
    public string Note { get; set; } = "";

    /// <summary>The drawing as SVG text, made by the product itself from its records; never text of a customer's file.</summary>
    [Parameter, EditorRequired]
    public string Svg { get; set; } = "";
}
