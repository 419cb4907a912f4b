using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Design;

/// <summary>A picture on a neutral grey surround, so that nothing beside it tints the eye.</summary>
public sealed partial class PictureMat
{
    /// <summary>Address of the picture.</summary>
    [Parameter, EditorRequired]
    public string Src { get; set; } = "";

    /// <summary>What the picture shows, for those who do not see it.</summary>
    [Parameter, EditorRequired]
    public string Alt { get; set; } = "";

    /// <summary>Words under it.</summary>
    [Parameter]
    public string Note { get; set; } = "";

    /// <summary>Neutral value of the surround: <c>n5</c>, <c>n6</c> or <c>n7</c>.</summary>
    [Parameter]
    public string Tone { get; set; } = "n6";

    /// <summary>A further class, for pictures that take turns.</summary>
    [Parameter]
    public string? Class { get; set; }
}
