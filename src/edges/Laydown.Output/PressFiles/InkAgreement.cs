using Laydown.Measures;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>All items of a run must need the same planes, and the press must have a channel for each.</summary>
internal static class InkAgreement
{
    /// <summary>Layers of an item: its own where they agree with the run's, which may differ only in where each picture comes from.</summary>
    public static LayerStack StackOf(RunContext context, ItemRecord item) =>
        item.Stack is { } own && own.Layers.Select(l => (l.Face, l.Group)).SequenceEqual(context.Run.Stack.Layers.Select(l => (l.Face, l.Group)))
            ? own
            : context.Run.Stack;

    /// <summary>What is wrong with an item's planes of a layer, or null.</summary>
    /// <param name="context">The run.</param>
    /// <param name="item">The item.</param>
    /// <param name="layer">Layer from 0.</param>
    /// <param name="planes">How many planes the item's layer has.</param>
    /// <param name="inks">Planes of the run's layer.</param>
    public static InputFault? Fault(RunContext context, ItemRecord item, int layer, int planes, IReadOnlyList<InkPlane> inks)
    {
        if (planes != inks.Count)
        {
            double strength = StackOf(context, item).Layers[layer].StrengthPercent;
            return Of(item, Invariant($"layer {layer + 1}"), Invariant($"strength {strength} %"), "the strength of the run's other items");
        }

        foreach (IGrouping<InkRole, InkPlane> need in inks.GroupBy(p => p.Role))
        {
            int channels = context.Press.Channels.Count(c => c.Role == need.Key);
            if (channels < need.Count())
                return Of(item, "channels", Invariant($"{channels} for {need.Key} on {context.Press.Id}"), Invariant($"{need.Count()} for layer {layer + 1}"));
        }

        return null;
    }

    private static InputFault Of(ItemRecord item, string field, string found, string wanted) => new(item.Item.Artwork, null, field, found, wanted);
}
