using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Design;

/// <summary>Words that must not be missed: a caution of this step, a refusal, or a note.</summary>
public sealed partial class Notice
{
    /// <summary>First line: what kind of notice it is, in words.</summary>
    [Parameter, EditorRequired]
    public string Heading { get; set; } = "";

    /// <summary><c>caution</c>, <c>stop</c>, or empty for a note.</summary>
    [Parameter]
    public string Kind { get; set; } = "";

    /// <summary>The words.</summary>
    [Parameter]
    public RenderFragment? ChildContent { get; set; }
}
