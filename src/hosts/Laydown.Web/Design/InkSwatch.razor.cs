using Laydown.Press.Inks;
using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Design;

/// <summary>An ink's name with a small field of its colour.</summary>
public sealed partial class InkSwatch
{
    private string fill = "none";

    /// <summary>The ink.</summary>
    [Parameter, EditorRequired]
    public InkRole Role { get; set; }

    /// <inheritdoc/>
    protected override void OnParametersSet() => fill = Role switch
    {
        InkRole.Cyan => "#0093c8",
        InkRole.Magenta => "#c8327c",
        InkRole.Yellow => "#e6cb00",
        InkRole.Black => "#161616",
        InkRole.LightCyan => "#8fcfe6",
        InkRole.LightMagenta => "#e5a3c3",
        InkRole.White => "#ffffff",
        InkRole.Clear => "none",
        _ => throw new ArgumentOutOfRangeException(nameof(Role), Role, "An ink role: wanted one that has a colour."),
    };
}
