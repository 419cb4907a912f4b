using Laydown.Measures;
using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Design;

/// <summary>A finding: its number on the drawing, how bad, what, measured and wanted value, repair, source.</summary>
public sealed partial class FindingRow
{
    /// <summary>The finding.</summary>
    [Parameter, EditorRequired]
    public Finding Of { get; set; } = new("", Severity.Note, null, null, "", "", "", null, "");

    /// <summary>Its number, also written at its place on the drawing.</summary>
    [Parameter, EditorRequired]
    public int Number { get; set; }

    /// <summary>Whether its place is shown.</summary>
    [Parameter]
    public bool Chosen { get; set; }

    /// <summary>Called with the number to show its place.</summary>
    [Parameter]
    public EventCallback<int> OnChoose { get; set; }
}
