using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Build;

/// <summary>Derives the order and mirroring of layers from where the viewers stand; neither is ever asked for.</summary>
/// <remarks>
/// The layers are first laid out from the front viewer's eye inward: picture, white, block-out, and for what lies behind white again and a picture.
/// Then the face decides where the sheet comes among them, which end of each face is printed first, and what is mirrored: whatever its viewer sees
/// through the sheet. Clear goes on last. Public guides contradict each other here; the viewing side decides.
/// </remarks>
public static class StackBuilder
{
    /// <summary>Most strength of one layer, percent: a press file holds no more than full laydown.</summary>
    private const double MostPercent = 100;

    /// <summary>Derives the stack of a wish on a stock for a press and its inks; layers written out by hand are taken as they stand.</summary>
    /// <param name="wish">What the customer wants to see.</param>
    /// <param name="stock">The sheet.</param>
    /// <param name="press">The press.</param>
    /// <param name="inkSet">Its inks.</param>
    /// <param name="file">File the wish came from, for the faults.</param>
    /// <param name="path">JSON path of the wish in it.</param>
    /// <returns>The stack with a sentence for each decision, or faults that say what would do. <see cref="StackJudge"/> says whether it works.</returns>
    public static Reading<LayerStack> Derive(
        BuildWish wish, Stock stock, PressDescription press, InkSet inkSet, string file = "order.json", string path = "/build")
    {
        List<InputFault> faults = [.. wish.Layers is null ? WishFaults.Of(wish, stock, file, path) : WishFaults.OfLayers(wish.Layers, file, path)];
        if (faults.Count > 0)
            return Reading.Refused<LayerStack>(faults);

        List<string> because = wish.Layers is null ? [] : ["The layers were written out by hand and are taken as they stand; their order is checked."];
        IReadOnlyList<Layer> layers = wish.Layers ?? Layers(wish, stock, inkSet, because);
        faults.AddRange(PressFaults(layers, press, inkSet, file, path));
        return faults.Count > 0
            ? Reading.Refused<LayerStack>(faults)
            : Reading.Of(new LayerStack(layers, wish.Lit || wish.DayNight, because, wish.SeenFrom, wish.DayNight));
    }

    private static IReadOnlyList<Layer> Layers(BuildWish wish, Stock stock, InkSet inkSet, List<string> because)
    {
        PrintedFace printed = FaceChoice.Of(wish, stock, because);
        (List<PlannedLayer> before, List<PlannedLayer> behind) = FromEye.Of(wish, stock, inkSet, printed, because);

        // From the eye inward so far; on the first surface the sheet ends the row, on the second it begins it.
        List<Layer> first = [], second = [];
        (printed == PrintedFace.Second ? second : first).AddRange(before.Select(l => l.On(printed == PrintedFace.Second ? SheetFace.Second : SheetFace.First)));
        (printed == PrintedFace.First ? first : second).AddRange(behind.Select(l => l.On(printed == PrintedFace.First ? SheetFace.First : SheetFace.Second)));
        first.Reverse();
        if (wish.Clear)
        {
            AddClear(first, wish.ClearShaping);
            AddClear(second, wish.ClearShaping);
            because.Add(printed == PrintedFace.Both ? "Clear goes on last on each face, over all the rest." : "Clear goes on last, over all the rest.");
        }

        Tell([.. first, .. second], because);
        return [.. first, .. second];
    }

    private static void AddClear(List<Layer> face, MaskShaping? shaping)
    {
        if (face.Count > 0)
            face.Add(new Layer(face[0].Face, InkGroup.Clear, WhiteSource.Flood, null, 1, MostPercent, 0, face[^1].Mirrored).With(shaping));
    }

    // One sentence for each group whose masks are worked up; layers that share a strength share it.
    private static void Tell(IEnumerable<Layer> layers, List<string> because)
    {
        foreach (Layer layer in layers.Where(l => !l.Shaping.IsNone).DistinctBy(l => l.Group))
        {
            string fade = layer.FeatherMm > 0 ? " The fade lies within the edge, so no hard rim shows beside the picture where register is off." : "";
            because.Add(Invariant($"Mask of the {Words(layer.Group)}: {string.Join(", ", layer.Shaping.Words())}, as asked for.{fade}"));
        }
    }

    /// <summary>Shares a strength evenly among as many layers as it needs.</summary>
    internal static IEnumerable<PlannedLayer> Shared(PlannedLayer layer, List<string> because)
    {
        int count = (int)Math.Ceiling((layer.Percent / MostPercent) - 1e-9);
        string name = layer.Group == InkGroup.White ? "white" : "block-out";
        string sentence = Invariant($"{layer.Percent:0} % {name} is more than one layer holds: {count} layers of {layer.Percent / count:0.#} %.");
        if (count > 1 && !because.Contains(sentence, StringComparer.Ordinal))
            because.Add(sentence);
        return Enumerable.Repeat(layer with { Percent = layer.Percent / count }, count);
    }

    private static IEnumerable<InputFault> PressFaults(IReadOnlyList<Layer> layers, PressDescription press, InkSet inkSet, string file, string path)
    {
        if (layers.Count > press.MaxLayers)
        {
            yield return new(file, null, path, Invariant($"{layers.Count} layers ({string.Join(", ", layers.Select(l => Words(l.Group)))})"),
                Invariant($"at most {press.MaxLayers} on {press.Name}: fewer layers or a press that takes {layers.Count}"));
        }

        foreach ((InkGroup group, InkRole role, string field, string ink) in Needs)
        {
            if (layers.All(l => l.Group != group))
                continue;
            if (press.Channels.All(c => c.Role != role))
                yield return new(file, null, Invariant($"{path}/{field}"), Invariant($"{press.Name}, which has no {ink} channel"), Invariant($"a press with {ink}, or a build without it"));
            else if (inkSet.Find(role) is null)
                yield return new(file, null, Invariant($"{path}/{field}"), Invariant($"{inkSet.Name}, which has no {ink} ink"), Invariant($"an ink set with {ink}, or a build without it"));
        }
    }

    private static IReadOnlyList<(InkGroup Group, InkRole Role, string Field, string Ink)> Needs { get; } =
    [
        (InkGroup.White, InkRole.White, "white", "white"), (InkGroup.Clear, InkRole.Clear, "clear", "clear"),
        (InkGroup.BlockOut, InkRole.Black, "blockOut", "black"),
    ];

    /// <summary>A group in a word.</summary>
    internal static string Words(InkGroup group) => group switch
    {
        InkGroup.Colour => "colour",
        InkGroup.White => "white",
        InkGroup.Clear => "clear",
        _ => "block-out",
    };
}
