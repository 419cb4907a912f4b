using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Design;

/// <summary>Names and values in columns.</summary>
public sealed partial class KeySheet
{
    /// <summary>Whether the values are the few large readings of a page.</summary>
    [Parameter]
    public bool Dials { get; set; }

    /// <summary><see cref="KeyLine"/>s.</summary>
    [Parameter]
    public RenderFragment? ChildContent { get; set; }
}
