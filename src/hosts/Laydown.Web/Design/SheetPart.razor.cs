using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Design;

/// <summary>A section of a page: its heading in the margin, as on a data sheet, its content beside it.</summary>
public sealed partial class SheetPart
{
    /// <summary>Id on the page, for links to it.</summary>
    [Parameter, EditorRequired]
    public string Id { get; set; } = "";

    /// <summary>The heading.</summary>
    [Parameter, EditorRequired]
    public string Heading { get; set; } = "";

    /// <summary>A line under the heading, or null.</summary>
    [Parameter]
    public string? Note { get; set; }

    /// <summary>What stands beside the heading.</summary>
    [Parameter]
    public RenderFragment? ChildContent { get; set; }
}
