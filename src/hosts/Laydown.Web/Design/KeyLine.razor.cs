using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Design;

/// <summary>One name and value of a <see cref="KeySheet"/>.</summary>
public sealed partial class KeyLine
{
    /// <summary>The name.</summary>
    [Parameter, EditorRequired]
    public string Name { get; set; } = "";

    /// <summary>The unit, or null.</summary>
    [Parameter]
    public string? Unit { get; set; }

    /// <summary>The value.</summary>
    [Parameter]
    public RenderFragment? ChildContent { get; set; }
}
