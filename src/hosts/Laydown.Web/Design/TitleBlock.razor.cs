using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Design;

/// <summary>Head of a page: where one comes from, the one h1, and what belongs right under it.</summary>
public sealed partial class TitleBlock
{
    /// <summary>The title, also of the browser's window.</summary>
    [Parameter, EditorRequired]
    public string Title { get; set; } = "";

    /// <summary>The way back, over the title; null without.</summary>
    [Parameter]
    public RenderFragment? From { get; set; }

    /// <summary>State and short facts under the title.</summary>
    [Parameter]
    public RenderFragment? ChildContent { get; set; }
}
