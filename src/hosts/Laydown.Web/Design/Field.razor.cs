using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Design;

/// <summary>An input with its label above it and a line of help below.</summary>
public sealed partial class Field
{
    /// <summary>Id of the input inside; its help has the id <c>…-help</c>.</summary>
    [Parameter, EditorRequired]
    public string Id { get; set; } = "";

    /// <summary>The label, with the unit.</summary>
    [Parameter, EditorRequired]
    public string Label { get; set; } = "";

    /// <summary>What is wanted, or null.</summary>
    [Parameter]
    public string? Help { get; set; }

    /// <summary>The input.</summary>
    [Parameter]
    public RenderFragment? ChildContent { get; set; }
}
