using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Forms;

/// <summary>A choice with its label; within a form that was refused it holds what was chosen, with what speaks against it below.</summary>
public sealed partial class TypedChoice
{
    /// <summary>The field.</summary>
    [Parameter, EditorRequired]
    public FormField Of { get; set; } = null!;

    /// <summary>What can be chosen: as it is sent, and in words.</summary>
    [Parameter, EditorRequired]
    public IEnumerable<(string Value, string Text)> Choices { get; set; } = [];

    /// <summary>What is chosen at first; null for the first.</summary>
    [Parameter]
    public string? Value { get; set; }

    /// <summary>Further attributes of the choice.</summary>
    [Parameter(CaptureUnmatchedValues = true)]
    public IReadOnlyDictionary<string, object>? More { get; set; }

    [CascadingParameter]
    private RefusedForm? Refused { get; set; }

    private string? Against => Refused?.Against(Of);
}
