using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Design;

/// <summary>A table with a caption; where it is wider than the page it scrolls inside itself, by keyboard too.</summary>
public sealed partial class TableFrame
{
    /// <summary>What the table holds.</summary>
    [Parameter, EditorRequired]
    public string Caption { get; set; } = "";

    /// <summary>Whether the caption is only spoken, because a heading beside it says the same.</summary>
    [Parameter]
    public bool Quiet { get; set; } = true;

    /// <summary>A further class, for tables whose columns line up from one to the next.</summary>
    [Parameter]
    public string? Class { get; set; }

    /// <summary>Head, body and foot.</summary>
    [Parameter]
    public RenderFragment? ChildContent { get; set; }
}
