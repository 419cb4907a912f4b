using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Raster.Passes;
using Laydown.Raster.Screens;
using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>Makes good, in the dots of a run, the nozzles that its press says are missing (docs/decisions/0010).</summary>
internal static class DeadNozzles
{
    /// <summary>The screen of a layer, behind the mending where a nozzle of one of its inks is missing.</summary>
    /// <param name="context">The run; its press tells the state of nozzles.</param>
    /// <param name="layer">The layer.</param>
    /// <param name="screen">The screen alone.</param>
    public static ILayerScreen Mended(RunContext context, DotLayer layer, ILayerScreen screen)
    {
        IReadOnlySet<int>?[] missing = [.. layer.Inks.Select((ink, plane) => MissingOf(context.Press, ink.Role, layer.Inks.Take(plane).Count(i => i.Role == ink.Role)))];
        if (missing.All(m => m is null))
            return screen;
        IReadOnlyList<Layer> all = context.Run.Stack.Layers;
        Layer[] face = [.. all.Where(l => l.Face == all[layer.Layer].Face)];
        int before = all.Take(layer.Layer).Count(l => l.Face == all[layer.Layer].Face);
        PassPlan plan = PassPlans.Of(context.Press, context.Mode, face.Length, layer.Placement.Rows).Value;
        return new MendedScreen(new NozzleMend(plan, before, missing), screen);
    }

    // The first plane of an ink is printed by its first channel, the second by its second.
    private static HashSet<int>? MissingOf(PressDescription press, InkRole role, int number)
    {
        string? id = press.Channels.Where(c => c.Role == role).ElementAtOrDefault(number)?.Id;
        NozzleState? state = press.NozzleStates?.FirstOrDefault(s => string.Equals(s.ChannelId, id, StringComparison.Ordinal));
        return state is { Missing.Count: > 0 } ? [.. state.Missing] : null;
    }
}
