using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Design;

/// <summary>A state as a shape and a word; its colour only supports, so that it reads in grey as well.</summary>
public sealed partial class StateMark
{
    private MarkLook look = MarkLook.Of("Waiting");

    /// <summary>The state's name, as the records and CIP4 XJDF have it: <c>Waiting</c>, <c>Stopped</c>, <c>Ready</c>, <c>Planned</c>,
    /// <c>InProgress</c>, <c>Completed</c>, <c>Aborted</c>, or a severity: <c>Stop</c>, <c>Warn</c>, <c>Note</c>.</summary>
    [Parameter, EditorRequired]
    public string State { get; set; } = "Waiting";

    /// <inheritdoc/>
    protected override void OnParametersSet() => look = MarkLook.Of(State);
}
