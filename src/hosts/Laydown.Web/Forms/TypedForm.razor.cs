using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Forms;

/// <summary>A plain form that needs no script; where it was refused, its fields show what was typed and what speaks against it.</summary>
public sealed partial class TypedForm
{
    /// <summary>Its fields.</summary>
    [Parameter, EditorRequired]
    public FormFields Of { get; set; } = null!;

    /// <summary>Where it is sent.</summary>
    [Parameter, EditorRequired]
    public string Action { get; set; } = "";

    /// <summary>The form of the page that was refused; null for none.</summary>
    [Parameter, EditorRequired]
    public RefusedForm? Refused { get; set; }

    /// <summary>Whether it only asks, and so stands in the address of the page.</summary>
    [Parameter]
    public bool Asks { get; set; }

    /// <summary>Its class in the style sheet.</summary>
    [Parameter]
    public string Look { get; set; } = "fields";

    /// <summary>Its fields and buttons.</summary>
    [Parameter]
    public RenderFragment? ChildContent { get; set; }
}
