using Laydown.Press.Inks;
using Laydown.Press.Stacks;

namespace Laydown.Plan.Runs;

/// <summary>Which inks a layer is printed with.</summary>
public static class LayerRoles
{
    private static readonly InkRole[] Process =
        [InkRole.Cyan, InkRole.Magenta, InkRole.Yellow, InkRole.Black, InkRole.LightCyan, InkRole.LightMagenta];

    /// <summary>Ink roles of a group; light inks included in colour. Block-out is black.</summary>
    public static IReadOnlyList<InkRole> Of(InkGroup group) => group switch
    {
        InkGroup.Colour => Process,
        InkGroup.White => [InkRole.White],
        InkGroup.Clear => [InkRole.Clear],
        _ => [InkRole.Black],
    };
}
