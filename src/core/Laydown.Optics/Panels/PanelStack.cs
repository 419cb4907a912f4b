using Laydown.Optics.Looks;

namespace Laydown.Optics.Panels;

/// <summary>A stack that can show two pictures: colour, white, colour as the viewer meets them.</summary>
/// <remarks>Between and around them may lie the sheet and clear layers. The colour nearer to the viewer makes the day picture, the one
/// behind the white filters the lamp. A colour that scatters is taken as a clear film that absorbs as much: between surface and white most of what it
/// throws back meets white again. <see cref="ScatterLeftOut"/> says so.</remarks>
public sealed record PanelStack
{
    /// <summary>A stack.</summary>
    /// <param name="sheet">The bare sheet, clear or opal.</param>
    /// <param name="layers">Layers in print order, each face from the sheet outward.</param>
    /// <param name="viewedFrom">The face toward the viewer.</param>
    /// <param name="limits">How much ink the colour layers take.</param>
    /// <param name="splits">Hues of the front layer that a light and a dark ink share.</param>
    /// <exception cref="ArgumentException">The layers are not colour, white, colour from the viewer inward, or limits are for another
    /// number of inks.</exception>
    public PanelStack(
        LookSheet sheet, IReadOnlyList<LookLayer> layers, LookFace viewedFrom, PanelLimits limits, IReadOnlyList<PanelSplit>? splits = null)
    {
        (Sheet, ViewedFrom, Limits) = (sheet, viewedFrom, limits);
        Layers = [.. layers.Select(l => l.IsWhite ? l : new LookLayer(l.Face, [.. l.Inks.Select(AsFilm)]))];
        ScatterLeftOut = layers.Any(l => !l.IsWhite && l.Inks.Any(i => i.Scatter.Any(v => v > 0)));
        Splits = [.. splits ?? []];
        Order = OrderOf(layers, viewedFrom);
        int[] printed = Printed(layers, Order);
        if (!Fits(layers, printed))
        {
            throw new ArgumentException(
                Invariant($"From the viewer inward: found {Words(layers, printed)}; wanted colour, white, colour."), nameof(layers));
        }

        (DayLayer, NightLayer, WhiteLayers) = (printed[0], printed[^1], printed[1..^1]);
        if (limits.FrontMost.Count != layers[DayLayer].Inks.Count || limits.BackMost.Count != layers[NightLayer].Inks.Count)
        {
            string wanted = Invariant($"{layers[DayLayer].Inks.Count} and {layers[NightLayer].Inks.Count}");
            throw new ArgumentException(
                Invariant($"Limits for {limits.FrontMost.Count} and {limits.BackMost.Count} inks: wanted {wanted}."), nameof(limits));
        }

        int inks = layers[DayLayer].Inks.Count;
        if (Splits.Any(s => s.Dark == s.Light || s.Dark < 0 || s.Light < 0 || s.Dark >= inks || s.Light >= inks))
            throw new ArgumentException(Invariant($"Splits: wanted two different inks of the {inks} in front each."), nameof(splits));
    }

    /// <summary>Stands for the sheet in <see cref="Order"/>.</summary>
    internal const int SheetPlace = -1;

    /// <summary>The sheet.</summary>
    public LookSheet Sheet { get; }

    /// <summary>Layers in print order, colours as clear films.</summary>
    public IReadOnlyList<LookLayer> Layers { get; }

    /// <summary>Hues of the front layer that a light and a dark ink share.</summary>
    public IReadOnlyList<PanelSplit> Splits { get; }

    /// <summary>Whether light inks that share a hue stay bare, the dark ones alone making it.</summary>
    public bool LightInksBare { get; init; }

    /// <summary>Whether a colour scatters and what it throws back was left out.</summary>
    public bool ScatterLeftOut { get; }

    /// <summary>The face toward the viewer.</summary>
    public LookFace ViewedFrom { get; }

    /// <summary>How much ink the colour layers take.</summary>
    public PanelLimits Limits { get; }

    /// <summary>Index of the colour layer nearer to the viewer.</summary>
    public int DayLayer { get; }

    /// <summary>Index of the colour layer behind the white.</summary>
    public int NightLayer { get; }

    /// <summary>Indices of the whites between them.</summary>
    public IReadOnlyList<int> WhiteLayers { get; }

    /// <summary>Number of coverages of a spot: all inks of all layers in print order.</summary>
    public int CoverageCount => Layers.Sum(l => l.Inks.Count);

    /// <summary>Layers and sheet from the viewer inward.</summary>
    internal IReadOnlyList<int> Order { get; }

    /// <summary>Index of a layer's first coverage.</summary>
    public int FirstCoverage(int layer) => Layers.Take(layer).Sum(l => l.Inks.Count);

    /// <summary>Whether a stack can show two pictures, so that the constructor takes it.</summary>
    public static bool Fits(IReadOnlyList<LookLayer> layers, LookFace viewedFrom) => Fits(layers, Printed(layers, OrderOf(layers, viewedFrom)));

    private static bool Fits(IReadOnlyList<LookLayer> layers, int[] printed) =>
        printed.Length >= 3 && IsColour(layers[printed[0]]) && IsColour(layers[printed[^1]]) && printed[1..^1].All(p => layers[p].IsWhite);

    private static int[] Printed(IReadOnlyList<LookLayer> layers, IReadOnlyList<int> order) =>
        [.. order.Where(p => p != SheetPlace && !IsClear(layers[p]))];

    private static int[] OrderOf(IReadOnlyList<LookLayer> layers, LookFace viewedFrom)
    {
        IEnumerable<int> On(LookFace face) => Enumerable.Range(0, layers.Count).Where(i => layers[i].Face == face);
        int[] order = [.. On(LookFace.First).Reverse(), SheetPlace, .. On(LookFace.Second)];
        if (viewedFrom == LookFace.Second)
            Array.Reverse(order);
        return order;
    }

    private static LookInk AsFilm(LookInk ink) => ink.Scatter.All(s => s == 0) ? ink : LookInk.Colour(ink.Density);

    private static bool IsColour(LookLayer layer) => !layer.IsWhite && !IsClear(layer);

    private static bool IsClear(LookLayer layer) => layer.Inks.All(i => i.Density.Concat(i.Scatter).Concat(i.Absorption).All(v => v == 0));

    private static string Words(IReadOnlyList<LookLayer> layers, int[] printed) =>
        printed.Length == 0 ? "no colour and no white" : string.Join(", ", printed.Select(p => layers[p].IsWhite ? "white" : "colour"));
}
