using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Design;

/// <summary>How far the making of a run is; the page's script keeps it up to date from the event stream.</summary>
public sealed partial class ProgressLine
{
    /// <summary>The run.</summary>
    [Parameter, EditorRequired]
    public string RunId { get; set; } = "";

    /// <summary>Whether it is being made as this page is drawn; the script loads the page again when that changes.</summary>
    [Parameter]
    public bool Busy { get; set; } = true;

    /// <summary>What is being done.</summary>
    [Parameter]
    public string Step { get; set; } = "";

    /// <summary>Done of the whole, percent.</summary>
    [Parameter]
    public double DonePercent { get; set; }
}
