using Laydown.Measures;
using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Design;

/// <summary>A number with its unit that can be asked why: opens to the formula with its inputs and to its source. Works without script.</summary>
public sealed partial class FigureLine
{
    /// <summary>The figure.</summary>
    [Parameter, EditorRequired]
    public Figure Of { get; set; } = new("", 0, "", "", "");
}
