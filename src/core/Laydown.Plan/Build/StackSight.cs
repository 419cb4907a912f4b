using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Build;

/// <summary>Says which layers a viewer sees by walking from his eye inward: no optics, only what covers what.</summary>
/// <remarks>
/// White of full strength hides what lies behind it by day; block-out and an opaque sheet hide by day and stop the lamp. A picture needs something
/// behind it that returns light: white, a sheet that is not clear, or the wall. Black returns none. White before white changes nothing by day.
/// Clear is never seen. These rules are held against the optics of all small stacks by a test.
/// </remarks>
public static class StackSight
{
    /// <summary>Reflectance from which a sheet serves as white, percent; common practice, no source.</summary>
    public const double WhiteSheetPercent = 80;

    /// <summary>Reflectance under which a sheet counts as black, percent; common practice, no source.</summary>
    public const double BlackSheetPercent = 10;

    /// <summary>Strength from which block-out stops light, percent; common practice, no source.</summary>
    public const double StopsPercent = 50;

    /// <summary>What a viewer sees of each layer.</summary>
    /// <param name="stack">The layers.</param>
    /// <param name="stock">The sheet.</param>
    /// <param name="viewer">Who looks.</param>
    /// <returns>One for each layer, in print order.</returns>
    public static IReadOnlyList<LayerSight> Of(LayerStack stack, Stock stock, Viewer viewer)
    {
        int[] path = Path(stack, viewer);
        LayerSight[] sights = new LayerSight[stack.Layers.Count];
        for (int at = 0; at < path.Length; at++)
        {
            if (path[at] >= 0)
                sights[path[at]] = new(Day(stack, stock, path, at), viewer == Viewer.Front ? Lit(stack, stock, path[at]) : Sight.Not);
        }

        return sights;
    }

    /// <summary>Layers by their place in print order, from a viewer's eye inward; −1 stands for the sheet.</summary>
    public static int[] Path(LayerStack stack, Viewer viewer)
    {
        int[] On(SheetFace face) => [.. Enumerable.Range(0, stack.Layers.Count).Where(i => stack.Layers[i].Face == face)];
        int[] fromFront = [.. On(SheetFace.First).Reverse(), -1, .. On(SheetFace.Second)];
        return viewer == Viewer.Front ? fromFront : [.. fromFront.Reverse()];
    }

    /// <summary>What returns room light to a viewer from behind a place of his path.</summary>
    internal static LightReturn Behind(LayerStack stack, Stock stock, int[] path, int at)
    {
        LightReturn found = LightReturn.Nothing;
        for (int next = at + 1; next < path.Length; next++)
        {
            Layer? layer = path[next] < 0 ? null : stack.Layers[path[next]];
            if (layer is null && stock.Light != SheetLight.Clear)
                return stock.ReflectancePercent >= BlackSheetPercent ? LightReturn.White : found;
            if (layer?.Group == InkGroup.White)
                found = LightReturn.Parts;
            if (layer?.Group == InkGroup.White && Covers(layer, Target(stack, path[at])))
                return LightReturn.White;
            if (layer is { Group: InkGroup.BlockOut, StrengthPercent: >= StopsPercent } && Covers(layer, Target(stack, path[at])))
                return found;
        }

        // Behind the windows of a mask stands the wall, so light comes back from everywhere.
        return found == LightReturn.Nothing ? LightReturn.Wall : LightReturn.White;
    }

    private static Layer? Target(LayerStack stack, int layer) => layer < 0 ? null : stack.Layers[layer];

    private static Sight Day(LayerStack stack, Stock stock, int[] path, int at)
    {
        Layer layer = stack.Layers[path[at]];
        Sight reached = Reached(stack, stock, path, at);
        return layer.Group switch
        {
            InkGroup.Clear => Sight.Not,
            InkGroup.White => FollowedByWhite(stack, stock, path, at) ? Sight.Not : reached,
            _ => Least(reached, Behind(stack, stock, path, at) switch
            {
                LightReturn.Nothing => Sight.Not,
                LightReturn.Parts => Sight.Partly,
                _ => Sight.Whole,
            }),
        };
    }

    /// <summary>How much of the room's light comes to a place and back to the eye past what lies before it.</summary>
    internal static Sight Reached(LayerStack stack, Stock stock, int[] path, int at)
    {
        Sight reached = Sight.Whole;
        double white = 0;
        for (int before = 0; before < at; before++)
        {
            if (path[before] < 0 && stock.Light == SheetLight.Opaque)
                return Sight.Not;
            if (path[before] < 0 || stack.Layers[path[before]] is not { Group: InkGroup.White or InkGroup.BlockOut } layer)
                continue;
            bool covers = Covers(layer, Target(stack, path[at]));
            white += covers && layer.Group == InkGroup.White ? layer.StrengthPercent : 0;
            if (white > 99.9 || (covers && layer is { Group: InkGroup.BlockOut, StrengthPercent: >= StopsPercent }))
                return Sight.Not;
            reached = Sight.Partly;
        }

        return reached;
    }

    private static Sight Lit(LayerStack stack, Stock stock, int index)
    {
        if (!stack.Lit || stock.Light == SheetLight.Opaque || stack.Layers[index].Group == InkGroup.Clear)
            return Sight.Not;
        Sight passes = Sight.Whole;
        foreach ((int other, Layer layer) in stack.Layers.Index())
        {
            if (other == index || layer.Group != InkGroup.BlockOut)
                continue;
            if (Covers(layer, stack.Layers[index]) && layer.StrengthPercent >= StopsPercent)
                return Sight.Not;
            passes = Sight.Partly;
        }

        return passes;
    }

    private static bool FollowedByWhite(LayerStack stack, Stock stock, int[] path, int at)
    {
        for (int next = at + 1; next < path.Length; next++)
        {
            if (path[next] < 0 && stock.Light != SheetLight.Opaque)
                continue;
            if (path[next] < 0)
                return stock.ReflectancePercent >= WhiteSheetPercent;
            Layer layer = stack.Layers[path[next]];
            if (layer.Group != InkGroup.Clear)
                return layer is { Group: InkGroup.White, StrengthPercent: >= StopsPercent } && Covers(layer, stack.Layers[path[at]]);
        }

        return false;
    }

    /// <summary>Whether a layer lies wherever another has its picture.</summary>
    private static bool Covers(Layer cover, Layer? picture) =>
        cover.IsFlood || (cover.Source == WhiteSource.UnderImage && picture is not null && picture.ArtworkPage == cover.ArtworkPage
            && picture.Source is null or WhiteSource.UnderImage && picture.Group != InkGroup.BlockOut);

    private static Sight Least(Sight one, Sight other) => one < other ? one : other;
}
