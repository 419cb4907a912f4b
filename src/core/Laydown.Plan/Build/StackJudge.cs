using Laydown.Measures;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Build;

/// <summary>Walks a stack from each viewer's eye inward and says where its order cannot work.</summary>
/// <remarks>Stop: cannot be made or cannot be seen. Warn: does not show what it carries. Note: advice. What <see cref="StackBuilder"/> derives gets notes at most.</remarks>
public static class StackJudge
{
    private const string Practice = "common practice, no source";

    /// <summary>Judges a stack.</summary>
    /// <param name="stack">The layers.</param>
    /// <param name="stock">The sheet.</param>
    /// <param name="mostLayers">Most layers the press allows; null where no press is known yet.</param>
    /// <returns>Findings without a place on the page, the worst first; none where all is well.</returns>
    public static IReadOnlyList<Finding> Judge(LayerStack stack, Stock stock, int? mostLayers = null)
    {
        List<View> views = [.. stack.Viewers.Select(v => new View(v, StackSight.Path(stack, v), StackSight.Of(stack, stock, v)))];
        return
        [
            .. Limits(stack, stock, mostLayers)
                .Concat(views.SelectMany(v => OfViewer(stack, stock, v, views.Count > 1)))
                .Concat(stack.Layers.Index().SelectMany(l => OfLayer(stack, stock, views, l.Index)))
                .Concat(DayAndNight(stack, views[0]))
                .Concat(Advice(stack, stock, views))
                .OrderByDescending(f => f.Severity),
        ];
    }

    private sealed record View(Viewer Viewer, int[] Path, IReadOnlyList<LayerSight> Sights)
    {
        /// <summary>Whether the viewer looks at a face through the sheet.</summary>
        public bool Through(SheetFace face) => (Viewer == Viewer.Front) != (face == SheetFace.First);

        /// <summary>Who it is, in words.</summary>
        public string Name(bool several) => !several ? "the viewer" : Viewer == Viewer.Front ? "the viewer in front" : "the viewer on the back";
    }

    private static IEnumerable<Finding> Limits(LayerStack stack, Stock stock, int? mostLayers)
    {
        if (stack.Layers.Count > mostLayers)
        {
            yield return Found("stack-layers", Severity.Stop, "The press cannot print so many layers.",
                Invariant($"{stack.Layers.Count} layers"), Invariant($"at most {mostLayers}"), "Leave layers out, or take a press that prints more.");
        }

        if (stack.Lit && stock.Light == SheetLight.Opaque)
        {
            yield return Found("stack-lit-opaque", Severity.Stop, "The sheet lets no light of the lamp through.",
                Invariant($"{stock.Name}, opaque"), "a clear or opal stock, or no lamp", "Choose another stock.");
        }
        else if (stack.Lit && stack.Layers.Any(l => l is { Group: InkGroup.BlockOut, IsFlood: true, StrengthPercent: >= StackSight.StopsPercent }))
        {
            yield return Found("stack-block-out-lamp", Severity.Warn, "Block-out over the whole piece keeps all of the lamp's light back.",
                "block-out, flood, before the lamp", "a mask that leaves windows, or no lamp", "Give the block-out a mask, or leave it or the lamp out.");
        }
    }

    private static IEnumerable<Finding> OfViewer(LayerStack stack, Stock stock, View view, bool several)
    {
        int nearest = Array.FindIndex(view.Path, i => i >= 0 ? stack.Layers[i].Group != InkGroup.Clear : stock.Light != SheetLight.Clear);
        Layer? first = nearest < 0 || view.Path[nearest] < 0 ? null : stack.Layers[view.Path[nearest]];
        bool pictures = view.Path.Skip(nearest + 1).Any(i => i >= 0 && stack.Layers[i].Group == InkGroup.Colour);
        if (first is { Group: InkGroup.White or InkGroup.BlockOut, IsFlood: true } && pictures)
        {
            yield return Found("stack-white-nearest", Severity.Warn,
                Invariant($"{Capital(StackBuilder.Words(first.Group))} lies nearest to {view.Name(several)} and hides the picture behind it."),
                Invariant($"from the eye inward: {Inward(stack, view)}"), "the picture nearest to the eye", "Turn the order of the layers round, or print the other face.");
        }
        else if (stack.Layers.Any(l => l.Group == InkGroup.Colour)
            && !stack.Layers.Index().Any(l => l.Item.Group == InkGroup.Colour && view.Sights[l.Index].IsSeen))
        {
            yield return Found("stack-no-picture", Severity.Warn, Invariant($"{Capital(view.Name(several))} sees no picture at all."),
                Invariant($"from the eye inward: {Inward(stack, view)}"), "a picture before white and block-out", "Put a picture before the white on that side.");
        }
    }

    private static IEnumerable<Finding> OfLayer(LayerStack stack, Stock stock, IReadOnlyList<View> views, int index)
    {
        Layer layer = stack.Layers[index];
        List<View> seers = [.. views.Where(v => v.Sights[index].IsSeen)];
        if (layer.Group == InkGroup.Colour && seers.Count == 0)
        {
            yield return Found("stack-unseen", Severity.Warn, Invariant($"{Named(stack, index)} is seen by no one, by day or lit."),
                Cause(stack, stock, views, index), "each picture before white for a viewer, or before a lamp", "Move or leave out the layer.");
        }
        else if (layer.Group is InkGroup.White or InkGroup.BlockOut && Idle(stack, stock, views, index))
        {
            yield return Found("stack-idle", Severity.Warn, Invariant($"{Named(stack, index)} does nothing: no one sees it and no light is held back by it."),
                Cause(stack, stock, views, index), "white or black that someone sees or that light has to cross", "Leave out the layer.");
        }

        // Whoever sees a picture must find it the right way round; a mask must lie right for one of the viewers.
        IReadOnlyList<View> judged = layer.Group == InkGroup.Colour && seers.Count > 0 ? seers : views;
        if (!layer.IsFlood && !judged.Any(v => v.Through(layer.Face) == layer.Mirrored))
        {
            bool through = judged[0].Through(layer.Face);
            yield return Found("stack-mirrored", Severity.Warn,
                Invariant($"{Named(stack, index)} shows side-inverted: it is seen {(through ? "through the sheet" : "from the printed side")}."),
                layer.Mirrored ? "mirrored" : "right-reading", through ? "mirrored" : "right-reading", through ? "Mirror the layer." : "Do not mirror the layer.");
        }
    }

    // Doing nothing: white hidden from all by day that no lamp crosses, and black that no one sees on a sheet without light to hold back.
    private static bool Idle(LayerStack stack, Stock stock, IReadOnlyList<View> views, int index) => stack.Layers[index].Group == InkGroup.White
        ? views.All(v => StackSight.Reached(stack, stock, v.Path, Array.IndexOf(v.Path, index)) == Sight.Not && v.Sights[index].Lit == Sight.Not)
        : stock.Light == SheetLight.Opaque && !views.Any(v => v.Sights[index].IsSeen);

    private static IEnumerable<Finding> DayAndNight(LayerStack stack, View front)
    {
        if (!stack.DayNight)
            yield break;
        List<int> day = PicturesOf(stack, 1), night = PicturesOf(stack, 2);
        if (day.Count > 0 && day.TrueForAll(i => front.Sights[i].Day == Sight.Not))
        {
            yield return Found("stack-day-hidden", Severity.Warn, "The day picture lies behind the white and is never seen by day.",
                Invariant($"from the eye inward: {Inward(stack, front)}"), "day picture, white, night picture", "Turn the order of the layers round, or print the other face.");
        }

        if (night.Exists(i => front.Sights[i].Day == Sight.Whole))
        {
            yield return Found("stack-night-by-day", Severity.Warn, "The night picture lies before the white and is seen by day.",
                Invariant($"from the eye inward: {Inward(stack, front)}"), "day picture, white, night picture", "Put the night picture behind the white.");
        }

        if (night.Count > 0 && night.TrueForAll(i => front.Sights[i].Lit == Sight.Not))
        {
            yield return Found("stack-night-dark", Severity.Warn, "The lamp's light does not come through the night picture.",
                Invariant($"from the eye inward: {Inward(stack, front)}"), "no block-out over the night picture", "Open a window in the block-out, or leave it out.");
        }
    }

    private static IEnumerable<Finding> Advice(LayerStack stack, Stock stock, IReadOnlyList<View> views)
    {
        foreach ((int index, Layer layer) in stack.Layers.Index().Where(l => l.Item.Group == InkGroup.Colour))
        {
            if (views.Any(v => OnWall(stack, stock, v, index)))
            {
                yield return Found("stack-no-white", Severity.Note,
                    Invariant($"{Named(stack, index)} has no white behind it: the clear sheet shows what stands behind the piece."),
                    "no white behind it", "white behind the picture, or a wish for glass", "Put white behind the picture.");
            }
        }

        bool split = stack.SeenFrom == SeenFrom.OneSide && Enum.GetValues<SheetFace>().All(f => stack.On(f).Any(l => l.Group != InkGroup.Clear));
        if (split && Parallax.Matters(stock))
        {
            yield return Found("stack-parallax", Severity.Note, Parallax.Sentence(stock),
                Invariant($"{Parallax.ShiftMm(stock.ThicknessMm):0.0} mm"), Invariant($"under {Parallax.NoticedMm} mm"), "Print all layers on one face where register matters.");
        }
    }

    private static bool OnWall(LayerStack stack, Stock stock, View view, int index) => view.Sights[index].Day == Sight.Whole
        && StackSight.Behind(stack, stock, view.Path, Array.IndexOf(view.Path, index)) == LightReturn.Wall;

    private static List<int> PicturesOf(LayerStack stack, int page) =>
        [.. stack.Layers.Index().Where(l => l.Item.Group == InkGroup.Colour && l.Item.ArtworkPage == page).Select(l => l.Index)];

    private static string Cause(LayerStack stack, Stock stock, IReadOnlyList<View> views, int index)
    {
        View view = views[0];
        int at = Array.IndexOf(view.Path, index);
        if (StackSight.Reached(stack, stock, view.Path, at) != Sight.Not)
            return "black behind it returns no light";
        return view.Path.Take(at).Contains(-1) && stock.Light == SheetLight.Opaque
            ? "behind the opaque sheet"
            : Invariant($"from the eye inward: {Inward(stack, view)}");
    }

    private static string Inward(LayerStack stack, View view) =>
        string.Join(", ", view.Path.Select(i => i < 0 ? "sheet" : Word(stack.Layers[i])));

    private static string Word(Layer layer) =>
        layer.Group == InkGroup.Colour ? Invariant($"picture of page {layer.ArtworkPage}") : StackBuilder.Words(layer.Group);

    private static string Named(LayerStack stack, int index) => Invariant($"Layer {index + 1}, {Word(stack.Layers[index])},");

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static Finding Found(string code, Severity severity, string what, string measured, string wanted, string repair) =>
        new(code, severity, null, null, what, measured, wanted, repair, Practice);
}
