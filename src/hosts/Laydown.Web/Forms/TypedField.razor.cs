using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Forms;

/// <summary>An input with its label; within a form that was refused it holds what was typed, with what speaks against it below.</summary>
public sealed partial class TypedField
{
    /// <summary>The field.</summary>
    [Parameter, EditorRequired]
    public FormField Of { get; set; } = null!;

    /// <summary>What stands in it at first; null for nothing.</summary>
    [Parameter]
    public string? Value { get; set; }

    /// <summary>Further attributes of the input.</summary>
    [Parameter(CaptureUnmatchedValues = true)]
    public IReadOnlyDictionary<string, object>? More { get; set; }

    [CascadingParameter]
    private RefusedForm? Refused { get; set; }

    private string? Against => Refused?.Against(Of);
}
