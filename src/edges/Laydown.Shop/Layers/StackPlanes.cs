using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;

namespace Laydown.Shop.Layers;

/// <summary>The planes that the layers of a stack have on a press: which inks, and how much of them.</summary>
internal static class StackPlanes
{
    private static readonly InkRole[] Process = [InkRole.Cyan, InkRole.Magenta, InkRole.Yellow, InkRole.Black];

    /// <summary>The layers with their planes; light inks where the set has them, the condition is calibrated for them and they are wanted.</summary>
    public static IReadOnlyList<LookedLayer> Of(LayerStack stack, PrintCondition condition, InkSet inks, bool withLightInks) =>
        [.. stack.Layers.Select(l => new LookedLayer(
            l.Face, l.Group, l.Group == InkGroup.Colour ? condition.TotalLimitPercent : Math.Min(200, Math.Max(100, l.StrengthPercent)),
            [.. Roles(l, condition, inks, withLightInks).Select(r => new LookPlane(r, inks.Find(r)?.Name ?? r.ToString()))]))];

    private static IEnumerable<InkRole> Roles(Layer layer, PrintCondition condition, InkSet inks, bool withLightInks) => layer.Group switch
    {
        InkGroup.White => Enumerable.Repeat(InkRole.White, layer.StrengthPercent > 100 ? 2 : 1),
        InkGroup.Clear => Enumerable.Repeat(InkRole.Clear, layer.StrengthPercent > 100 ? 2 : 1),
        InkGroup.BlockOut => [InkRole.Black],
        _ => Process.Concat(new[] { InkRole.LightCyan, InkRole.LightMagenta }
            .Where(r => withLightInks && inks.Find(r) is not null && condition.Inks.Any(i => i.Role == r))),
    };
}
