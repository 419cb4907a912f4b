using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;

namespace Laydown.Web.Design;

/// <summary>A button, or a link that looks like one where it only leads somewhere. At least 44 px high.</summary>
public sealed partial class PushButton
{
    /// <summary>Where it leads; null for a real button.</summary>
    [Parameter]
    public string? Href { get; set; }

    /// <summary>Whether it is the one main action of its section.</summary>
    [Parameter]
    public bool Main { get; set; }

    /// <summary>Whether it cannot be pressed now.</summary>
    [Parameter]
    public bool Disabled { get; set; }

    /// <summary><c>submit</c> in a form, else <c>button</c>.</summary>
    [Parameter]
    public string Type { get; set; } = "button";

    /// <summary>Called when it is pressed, on interactive pages.</summary>
    [Parameter]
    public EventCallback<MouseEventArgs> OnClick { get; set; }

    /// <summary>Its words: a verb.</summary>
    [Parameter]
    public RenderFragment? ChildContent { get; set; }
}
