using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Build;

/// <summary>What a wish asks for that cannot be, each with what would do.</summary>
internal static class WishFaults
{
    private const string ThroughSheet = "a clear or opal stock, or a picture seen from the printed side";

    /// <summary>The faults of a wish whose layers are to be derived.</summary>
    internal static IEnumerable<InputFault> Of(BuildWish wish, Stock stock, string file, string path) =>
        OfSheet(wish, stock).Concat(OfFace(wish, stock)).Concat(OfWhite(wish)).Concat(OfBlockOut(wish, stock)).Concat(OfBack(wish)).Concat(OfShapings(wish))
            .Select(f => new InputFault(file, null, path + f.Field, f.Found, f.Wanted));

    /// <summary>The faults of layers written out by hand.</summary>
    internal static IEnumerable<InputFault> OfLayers(IReadOnlyList<Layer> layers, string file, string path)
    {
        if (layers.Count == 0)
            yield return new(file, null, path + "/layers", "an empty list", "at least one layer, or no list to have them derived");
        foreach ((int i, Layer layer) in layers.Index())
        {
            string field = Invariant($"{path}/layers/{i}");
            double most = layer.Group == InkGroup.Colour ? 100 : 200;
            if (!(layer.StrengthPercent > 0 && layer.StrengthPercent <= most))
                yield return new(file, null, field + "/strengthPercent", Invariant($"{layer.StrengthPercent} %"), Invariant($"over 0 % to {most} %"));
            if (layer.Group == InkGroup.Colour && layer.Source is not null)
                yield return new(file, null, field + "/source", Words(layer.Source), "null, as colour shows its page");
            if (layer.Source == WhiteSource.NamedSeparation && string.IsNullOrWhiteSpace(layer.SeparationName))
                yield return new(file, null, field + "/separationName", "no name", "the name of the separation");
            if (layer.Negative && !Layer.TakesNegative(layer.Source))
                yield return new(file, null, field + "/negative", Invariant($"true for {Words(layer.Source)}"), "false, or a mask that can be read the other way round");
            foreach ((string name, string found, string wanted) in layer.Shaping.Faults(layer.Group, layer.Source))
                yield return new(file, null, Invariant($"{field}/{name}"), found, wanted);
        }
    }

    private static IEnumerable<(string Field, string Found, string Wanted)> OfSheet(BuildWish wish, Stock stock)
    {
        string sheet = Invariant($"{stock.Name}, which is opaque");
        if (stock.Light != SheetLight.Opaque)
            yield break;
        if (wish.SeenThroughSheet)
            yield return ("/seenThroughSheet", sheet, ThroughSheet);
        else if (wish.Printed == PrintedFace.Second)
            yield return ("/printed", sheet, ThroughSheet);
        else if (wish.Printed == PrintedFace.Both && wish.SeenFrom == SeenFrom.OneSide)
            yield return ("/printed", sheet + ", whose back no one sees", "first, or viewers on both sides");
        if (wish.DayNight)
            yield return ("/dayNight", sheet, "a clear or opal stock that lets the lamp through");
        else if (wish.Lit)
            yield return ("/lit", sheet, "a clear or opal stock that lets the lamp through, or no lamp");
    }

    private static IEnumerable<(string Field, string Found, string Wanted)> OfFace(BuildWish wish, Stock stock)
    {
        if (wish.SeenThroughSheet && wish.Printed is PrintedFace.First or PrintedFace.Both)
            yield return ("/printed", Invariant($"{Words(wish.Printed)}, with the picture seen through the sheet"), "second, or auto");
        bool both = wish.SeenFrom == SeenFrom.BothSides;
        if (wish.Printed == PrintedFace.Both && !both && stock.Light != SheetLight.Opaque && wish.White is null && wish.BackPage is null && wish.BlockOut is null)
            yield return ("/printed", "both, with one layer", "first or second; two faces need white or a second picture");
        if (both && stock.Light == SheetLight.Opaque && wish.Printed is PrintedFace.First or PrintedFace.Second)
            yield return ("/printed", Invariant($"{Words(wish.Printed)}, with viewers on both sides of an opaque sheet"), "both, or auto");
        if (both && (wish.Lit || wish.DayNight))
            yield return (wish.DayNight ? "/dayNight" : "/lit", "a lamp behind, where the second viewer stands", "no lamp, or a viewer on one side");
    }

    private static IEnumerable<(string Field, string Found, string Wanted)> OfWhite(BuildWish wish)
    {
        if (wish.White is WhiteSource.NamedSeparation && string.IsNullOrWhiteSpace(wish.WhiteSeparation))
            yield return ("/whiteSeparation", "no name", "the name of the separation that holds the white");
        bool wanted = wish.White is not null || wish.DayNight || wish.Back != BackPicture.None || wish.BlockOut is not null;
        if (wanted && !(wish.WhitePercent is > 0 and <= 200) && !(wish.White is null && wish.WhitePercent == 0))
            yield return ("/whitePercent", Invariant($"{wish.WhitePercent} %"), "over 0 % to 200 %");
        if (wish.WhiteNegative && !Layer.TakesNegative(wish.White))
            yield return ("/whiteNegative", Invariant($"true for {Words(wish.White)}"), "false, or white from alpha, a named separation or a mask picture");
    }

    private static IEnumerable<(string Field, string Found, string Wanted)> OfBlockOut(BuildWish wish, Stock stock)
    {
        if (wish.BlockOut is null)
            yield break;
        if (wish.BlockOut is WhiteSource.NamedSeparation && string.IsNullOrWhiteSpace(wish.BlockOutSeparation))
            yield return ("/blockOutSeparation", "no name", "the name of the separation that holds the block-out");
        if (!(wish.BlockOutPercent is > 0 and <= 200))
            yield return ("/blockOutPercent", Invariant($"{wish.BlockOutPercent} %"), "over 0 % to 200 %");
        if (wish.BlockOutNegative && !Layer.TakesNegative(wish.BlockOut))
            yield return ("/blockOutNegative", Invariant($"true for {Words(wish.BlockOut)}"), "false, or block-out from alpha, a named separation or a mask picture");
        if (wish.BlockOut is WhiteSource.Flood && (wish.Lit || wish.DayNight) && stock.Light != SheetLight.Opaque)
            yield return ("/blockOut", "a flood before a lamp: no light would come through", "a mask that leaves the lamp a window, or no lamp");
    }

    private static IEnumerable<(string Field, string Found, string Wanted)> OfBack(BuildWish wish)
    {
        bool both = wish.SeenFrom == SeenFrom.BothSides;
        if (wish.DayNight && wish.Back == BackPicture.Same)
            yield return ("/back", "same, for day and night", "own or none: page 2 is the night picture");
        if (both && wish.Back == BackPicture.None && !wish.DayNight)
            yield return ("/back", "none, with a viewer on the back", "same, or own for page 2");
        if (!both && wish.Back == BackPicture.Own && !wish.DayNight)
            yield return ("/back", "own, which no one would see", "dayNight true, or seenFrom bothSides");
        if (!both && wish.Back == BackPicture.Same && !wish.Lit && !wish.DayNight)
            yield return ("/back", "same, behind the white and without a lamp", "lit true, or seenFrom bothSides");
        if (wish.BackPercent is not (null or (> 0 and <= 100)))
            yield return ("/backPercent", Invariant($"{wish.BackPercent} %"), "over 0 % to 100 %");
        if (wish.MaskPage is < 1)
            yield return ("/maskPage", Invariant($"{wish.MaskPage}"), "a page from 1");
    }

    // White that no one named floods the piece, and so does clear.
    private static IEnumerable<(string Field, string Found, string Wanted)> OfShapings(BuildWish wish) =>
        OfShaping("/whiteShaping", wish.WhiteShaping, InkGroup.White, wish.White)
            .Concat(OfShaping("/blockOutShaping", wish.BlockOutShaping, InkGroup.BlockOut, wish.BlockOut))
            .Concat(OfShaping("/clearShaping", wish.ClearShaping, InkGroup.Clear, WhiteSource.Flood));

    private static IEnumerable<(string Field, string Found, string Wanted)> OfShaping(string field, MaskShaping? shaping, InkGroup group, WhiteSource? source) =>
        (shaping?.Faults(group, source) ?? []).Select(f => (field + "/" + f.Field, f.Found, f.Wanted));

    private static string Words(WhiteSource? source) => source is null ? "no source" : Camel(Invariant($"{source}"));

    private static string Words(PrintedFace face) => Camel(Invariant($"{face}"));

    private static string Camel(string word) => char.ToLowerInvariant(word[0]) + word[1..];
}
