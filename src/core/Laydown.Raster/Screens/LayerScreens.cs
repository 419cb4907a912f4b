using Laydown.Raster.Tiles;

namespace Laydown.Raster.Screens;

/// <summary>Screens for the inks of a layer.</summary>
public static class LayerScreens
{
    // Inks that darken less than this share of the darkest are too light for their dots to be seen among the others': own choice.
    private const double Light = 0.3;

    /// <summary>A screen for these inks and drops.</summary>
    /// <param name="inks">At least one, in the order of the tile's planes.</param>
    /// <param name="drops">Drops of the mode.</param>
    /// <param name="kind">How contone becomes dots.</param>
    /// <exception cref="ArgumentException">No ink, or a light ink of an ink that is not there or is light itself.</exception>
    public static ILayerScreen Of(IReadOnlyList<ScreenInk> inks, DropLevels drops, ScreenKind kind) => Of(inks, drops, kind, LanesHere.Best);

    /// <summary>The same with kernels of one width.</summary>
    internal static ILayerScreen Of(IReadOnlyList<ScreenInk> inks, DropLevels drops, ScreenKind kind, Lanes lanes)
    {
        Check(inks);
        return kind switch
        {
            ScreenKind.Arrays => new ArrayScreen(Families(inks), drops, lanes),
            ScreenKind.Intervals => new ArrayScreen(Chained(inks), drops, lanes),
            ScreenKind.Diffusion => new DiffusionScreen(Apart(inks), drops, DiffusionTable.Own, lanes),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Screen: wanted arrays, intervals or diffusion."),
        };
    }

    private static void Check(IReadOnlyList<ScreenInk> inks)
    {
        if (inks.Count == 0)
            throw new ArgumentException("Inks: found none; wanted at least one.", nameof(inks));
        foreach (ScreenInk ink in inks)
        {
            if (ink.LightOf is { } dark && (dark < 0 || dark >= inks.Count || inks[dark].LightOf is not null))
                throw new ArgumentException(Invariant($"{ink.Role}: found as light ink of ink {dark}; wanted a dark ink of the layer."), nameof(inks));
        }
    }

    // Each dark ink with its light ones behind it; the darkest first, so that it gets the first array.
    private static List<IReadOnlyList<int>> Families(IReadOnlyList<ScreenInk> inks) =>
        Enumerable.Range(0, inks.Count).Where(i => inks[i].LightOf is null).OrderByDescending(i => inks[i].Darkness).ThenBy(i => i)
            .Select(dark => (IReadOnlyList<int>)[dark, .. Enumerable.Range(0, inks.Count).Where(i => inks[i].LightOf == dark)]).ToList();

    // An array for each ink, the first for the darkest.
    private static ThresholdArray[] Apart(IReadOnlyList<ScreenInk> inks)
    {
        ThresholdArray[] arrays = new ThresholdArray[inks.Count];
        int number = 0;
        foreach (int ink in Families(inks).SelectMany(f => f))
            arrays[ink] = ThresholdArrays.Of(number++);
        return arrays;
    }

    // All families one behind the other on one array, but those too light to matter.
    private static List<IReadOnlyList<int>> Chained(IReadOnlyList<ScreenInk> inks)
    {
        List<IReadOnlyList<int>> families = Families(inks);
        double most = inks.Max(i => i.Darkness);
        int[] chain = families.Where(f => inks[f[0]].Darkness >= Light * most).SelectMany(f => f).ToArray();
        return [chain, .. families.Where(f => inks[f[0]].Darkness < Light * most)];
    }
}
