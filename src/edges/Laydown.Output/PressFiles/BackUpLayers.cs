using Laydown.Press.Stacks;

namespace Laydown.Output.PressFiles;

/// <summary>Which layer a piece shows that lies with its back up: the one that is printed at the same place of the other face.</summary>
internal static class BackUpLayers
{
    /// <summary>The layer of a stack that stands on the other face where this one stands on its own.</summary>
    /// <param name="stack">Layers, alike on both faces.</param>
    /// <param name="layer">Layer from 0.</param>
    /// <exception cref="ArgumentException">The other face has fewer layers.</exception>
    public static int Of(LayerStack stack, int layer)
    {
        SheetFace face = stack.Layers[layer].Face;
        int rank = stack.Layers.Take(layer).Count(l => l.Face == face);
        int[] other = [.. Enumerable.Range(0, stack.Layers.Count).Where(i => stack.Layers[i].Face != face)];
        return rank < other.Length ? other[rank] : throw new ArgumentException(
            Invariant($"Layer {layer + 1}: found {other.Length} layers on the other face; wanted at least {rank + 1}, for pieces that lie with their backs up."), nameof(layer));
    }
}
