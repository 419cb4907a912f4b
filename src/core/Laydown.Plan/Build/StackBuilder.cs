using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Build;

/// <summary>Derives the order and mirroring of layers from where the viewer stands; neither is ever asked for.</summary>
/// <remarks>
/// Seen through the sheet: second surface, mirrored, colour first and white last, so that the viewer meets the colour before the white.
/// Seen from the printed side: white first, then colour. Day and night: the day picture is always nearer to the viewer than the white, and the night
/// picture behind it. Clear goes on last. Public guides contradict each other here; the viewing side decides.
/// </remarks>
public static class StackBuilder
{
    /// <summary>Most strength of one white layer, percent: a press file holds no more than full laydown.</summary>
    private const double MostWhitePercent = 100;

    /// <summary>Derives the stack of a wish on a stock for a press and its inks.</summary>
    /// <param name="wish">What the customer wants to see.</param>
    /// <param name="stock">The sheet.</param>
    /// <param name="press">The press.</param>
    /// <param name="inkSet">Its inks.</param>
    /// <param name="file">File the wish came from, for the faults.</param>
    /// <param name="path">JSON path of the wish in it.</param>
    /// <returns>The stack with a sentence for each decision, or faults that say what would do.</returns>
    public static Reading<LayerStack> Derive(
        BuildWish wish, Stock stock, PressDescription press, InkSet inkSet, string file = "order.json", string path = "/build")
    {
        List<InputFault> faults = [.. WishFaults(wish, stock, file, path)];
        if (faults.Count > 0)
            return Reading.Refused<LayerStack>(faults);

        List<string> because = [];
        List<Layer> layers = Layers(wish, stock, because);
        faults.AddRange(PressFaults(layers, press, inkSet, file, path));
        return faults.Count > 0 ? Reading.Refused<LayerStack>(faults) : Reading.Of(new LayerStack(layers, wish.Lit || wish.DayNight, because));
    }

    private static IEnumerable<InputFault> WishFaults(BuildWish wish, Stock stock, string file, string path)
    {
        string sheet = Invariant($"{stock.Name}, which is opaque");
        if (stock.Light == SheetLight.Opaque && wish.SeenThroughSheet)
            yield return new(file, null, path + "/seenThroughSheet", sheet, "a clear or opal stock, or a picture seen from the printed side");
        if (stock.Light == SheetLight.Opaque && wish.DayNight)
            yield return new(file, null, path + "/dayNight", sheet, "a clear or opal stock that lets the lamp through");
        else if (stock.Light == SheetLight.Opaque && wish.Lit)
            yield return new(file, null, path + "/lit", sheet, "a clear or opal stock that lets the lamp through, or no lamp");
        if (wish.White is WhiteSource.NamedSeparation && string.IsNullOrWhiteSpace(wish.WhiteSeparation))
            yield return new(file, null, path + "/whiteSeparation", "no name", "the name of the separation that holds the white");
        if ((wish.White is not null || wish.DayNight) && !(wish.WhitePercent is > 0 and <= 200) && !(wish.White is null && wish.WhitePercent == 0))
            yield return new(file, null, path + "/whitePercent", Invariant($"{wish.WhitePercent} %"), "over 0 % to 200 %");
    }

    private static List<Layer> Layers(BuildWish wish, Stock stock, List<string> because)
    {
        SheetFace face = wish.SeenThroughSheet ? SheetFace.Second : SheetFace.First;
        bool mirrored = face == SheetFace.Second;
        because.Add(mirrored
            ? "The picture is looked at through the sheet: it is printed mirrored on the second surface."
            : "The picture is looked at from the printed side: it is printed right-reading on the first surface.");

        // From the eye inward first; the face then decides which end lies on the sheet.
        List<Layer> fromEye = wish.DayNight ? DayNight(wish, face, mirrored, because) : Plain(wish, stock, face, mirrored, because);
        if (face == SheetFace.First)
            fromEye.Reverse();
        if (wish.Clear)
        {
            fromEye.Add(new(face, InkGroup.Clear, WhiteSource.Flood, null, 1, 100, 0, mirrored));
            because.Add("Clear goes on last, over all the rest.");
        }

        return fromEye;
    }

    private static List<Layer> DayNight(BuildWish wish, SheetFace face, bool mirrored, List<string> because)
    {
        because.Add("By day only the picture in front of the white is seen; lit, both are. The day picture (page 1) lies nearest to the viewer, then white, then the night picture (page 2).");
        because.Add(face == SheetFace.First
            ? "On the first surface the lamp side is printed first: night picture, white, day picture."
            : "On the second surface the viewer's side is printed first: day picture, white, night picture.");
        if (wish.White is null)
            because.Add("Day and night need white between them; none was named, so it floods the piece.");
        return [Colour(face, 1, mirrored), .. Whites(wish, face, mirrored, because), Colour(face, 2, mirrored)];
    }

    private static List<Layer> Plain(BuildWish wish, Stock stock, SheetFace face, bool mirrored, List<string> because)
    {
        List<Layer> layers = [Colour(face, 1, mirrored)];
        if (wish.White is not null)
        {
            layers.AddRange(Whites(wish, face, mirrored, because));
            because.Add(mirrored
                ? "White behind the colour as the viewer sees it: on the second surface colour first, then white."
                : "White under the colour: on the first surface white first, then colour.");
        }
        else if (stock.Light == SheetLight.Clear)
        {
            because.Add("No white was ordered: the clear sheet shows what stands behind it.");
        }
        else if (stock.ReflectancePercent < 50 && stock.Light == SheetLight.Opaque)
        {
            because.Add(Invariant($"No white was ordered: the sheet returns {stock.ReflectancePercent:0} % of the light and darkens the picture."));
        }

        if (wish.Lit)
            because.Add("A lamp stands behind the piece: white and sheet spread its light, and the colours are judged lit.");
        return layers;
    }

    private static Layer Colour(SheetFace face, int page, bool mirrored) => new(face, InkGroup.Colour, null, null, page, 100, 0, mirrored);

    private static IEnumerable<Layer> Whites(BuildWish wish, SheetFace face, bool mirrored, List<string> because)
    {
        double percent = wish.WhitePercent > 0 ? wish.WhitePercent : MostWhitePercent;
        int count = (int)Math.Ceiling((percent / MostWhitePercent) - 1e-9);
        if (count > 1)
            because.Add(Invariant($"{percent:0} % white is more than one layer holds: {count} layers of {percent / count:0.#} %."));
        WhiteSource source = wish.White ?? WhiteSource.Flood;
        string? name = source == WhiteSource.NamedSeparation ? wish.WhiteSeparation : null;
        return Enumerable.Range(0, count).Select(_ => new Layer(face, InkGroup.White, source, name, 1, percent / count, wish.WhiteChokeMm, mirrored));
    }

    private static IEnumerable<InputFault> PressFaults(List<Layer> layers, PressDescription press, InkSet inkSet, string file, string path)
    {
        if (layers.Count > press.MaxLayers)
        {
            yield return new(file, null, path, Invariant($"{layers.Count} layers ({string.Join(", ", layers.Select(l => Words(l.Group)))})"),
                Invariant($"at most {press.MaxLayers} on {press.Name}: fewer layers or a press that takes {layers.Count}"));
        }

        foreach ((InkGroup group, InkRole role, string field) in new[] { (InkGroup.White, InkRole.White, "white"), (InkGroup.Clear, InkRole.Clear, "clear") })
        {
            if (layers.All(l => l.Group != group))
                continue;
            if (press.Channels.All(c => c.Role != role))
                yield return new(file, null, Invariant($"{path}/{field}"), Invariant($"{press.Name}, which has no {field} channel"), Invariant($"a press with {field}, or a build without it"));
            else if (inkSet.Find(role) is null)
                yield return new(file, null, Invariant($"{path}/{field}"), Invariant($"{inkSet.Name}, which has no {field} ink"), Invariant($"an ink set with {field}, or a build without it"));
        }
    }

    private static string Words(InkGroup group) => group switch
    {
        InkGroup.Colour => "colour",
        InkGroup.White => "white",
        InkGroup.Clear => "clear",
        _ => "block-out",
    };
}
