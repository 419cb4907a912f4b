using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Design;

/// <summary>Says that there is nothing, and what would bring something.</summary>
public sealed partial class EmptyState
{
    /// <summary>The words.</summary>
    [Parameter]
    public RenderFragment? ChildContent { get; set; }
}
