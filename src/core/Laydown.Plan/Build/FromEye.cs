using Laydown.Plan.Orders;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Build;

/// <summary>Lays the layers of a wish out from the front viewer's eye inward, in two rows: before the sheet and behind it where both faces are printed.</summary>
internal static class FromEye
{
    /// <summary>The rows; where one face is printed, the second goes on from the first.</summary>
    internal static (List<PlannedLayer> Before, List<PlannedLayer> Behind) Of(
        BuildWish wish, Stock stock, InkSet inkSet, PrintedFace printed, List<string> because)
    {
        bool both = wish.SeenFrom == SeenFrom.BothSides;
        List<PlannedLayer> before = [new(InkGroup.Colour, Viewer.Front, null, null, 1, 100, 0, false)], behind = [];
        if (NeedsWhite(wish, stock, because) is not { } source)
            NoWhite(stock, because);
        else
            AddWhite(wish, stock, source, printed, both, before, behind, because);
        bool stops = AddBlockOut(wish, stock, inkSet, printed, both, before, behind, because);
        if (wish.BackPage is not null)
            AddBack(wish, stock, inkSet, printed, both, stops, behind, because);
        if (wish.Lit && !wish.DayNight)
            because.Add("A lamp stands behind the piece: white and sheet spread its light, and the colours are judged lit.");
        return (before, behind);
    }

    // Two pictures with nothing but a sheet that lets light through between them would mix; a picture on black would vanish.
    private static WhiteSource? NeedsWhite(BuildWish wish, Stock stock, List<string> because)
    {
        if (wish.White is not null || stock.Light == SheetLight.Opaque)
            return wish.White;
        if (wish.DayNight)
            because.Add("Day and night need white between them; none was named, so it floods the piece.");
        else if (wish.BackPage is not null)
            because.Add("The pictures need white between them; none was named, so it floods the piece.");
        else if (wish.BlockOut is not null)
            because.Add("A picture on black would not be seen; no white was named, so it floods the piece.");
        return wish.BackPage is not null || wish.BlockOut is not null ? WhiteSource.Flood : null;
    }

    private static void NoWhite(Stock stock, List<string> because)
    {
        if (stock.Light == SheetLight.Clear)
            because.Add("No white was ordered: the clear sheet shows what stands behind it.");
        else if (stock.ReflectancePercent < 50 && stock.Light == SheetLight.Opaque)
            because.Add(Invariant($"No white was ordered: the sheet returns {stock.ReflectancePercent:0} % of the light and darkens the picture."));
    }

    private static void AddWhite(
        BuildWish wish, Stock stock, WhiteSource source, PrintedFace printed, bool both, List<PlannedLayer> before, List<PlannedLayer> behind, List<string> because)
    {
        // One picture on one face and its white on the other, where a single viewer asked for both faces.
        bool alone = printed == PrintedFace.Both && !both && wish.BackPage is null;
        (alone ? behind : before).AddRange(StackBuilder.Shared(White(wish, source, Viewer.Front), because));
        if (wish.WhiteNegative)
            because.Add("The mask of the white is read the other way round: where it has ink, the white has a window.");
        if (both || wish.BackPage is not null)
            return;
        because.Add(printed switch
        {
            PrintedFace.First => "White under the colour: on the first surface white first, then colour.",
            PrintedFace.Second => "White behind the colour as the viewer sees it: on the second surface colour first, then white.",
            _ => "White behind the colour as the viewer sees it: colour on the first surface, white on the second.",
        });
    }

    private static PlannedLayer White(BuildWish wish, WhiteSource source, Viewer viewer)
    {
        int page = source == WhiteSource.MaskPicture ? wish.MaskPageOrNext : viewer == Viewer.Back ? wish.BackPage ?? 1 : 1;
        string? name = source == WhiteSource.NamedSeparation ? wish.WhiteSeparation : null;
        return new(InkGroup.White, viewer, source, name, page, wish.WhitePercent > 0 ? wish.WhitePercent : 100, wish.WhiteChokeMm, wish.WhiteNegative,
            wish.WhiteShaping);
    }

    private static bool AddBlockOut(
        BuildWish wish, Stock stock, InkSet inkSet, PrintedFace printed, bool both, List<PlannedLayer> before, List<PlannedLayer> behind, List<string> because)
    {
        if (wish.BlockOut is not { } source)
            return false;
        if (stock.Light == SheetLight.Opaque)
        {
            because.Add("The sheet lets no light through: block-out is left out.");
            return false;
        }

        int page = source == WhiteSource.MaskPicture ? wish.MaskPageOrNext : 1;
        PlannedLayer layer = new(
            InkGroup.BlockOut, Viewer.Front, source, source == WhiteSource.NamedSeparation ? wish.BlockOutSeparation : null, page,
            wish.BlockOutPercent, wish.BlockOutChokeMm, wish.BlockOutNegative, wish.BlockOutShaping);
        (printed == PrintedFace.Both && !both && wish.BackPage is null ? behind : before).AddRange(StackBuilder.Shared(layer, because));
        because.Add("Block-out lies behind the white, so that the white still returns the picture's light and the black is not seen.");
        if (inkSet.Find(InkRole.Black) is { SolidDensity: > 0 } black)
            because.Add(Invariant($"One full layer of {black.Name} of density {black.SolidDensity:0.00} lets {100 * Math.Pow(10, -black.SolidDensity):0.#} % of the light through; the whites lower it further."));
        if (WhiteOverBlack.Sentence(inkSet, wish.WhitePercent > 0 ? wish.WhitePercent : 100) is { } darker)
            because.Add(darker);
        if (wish.BlockOutNegative)
            because.Add("The mask of the block-out is read the other way round: where it has ink, the lamp has a window.");
        return true;
    }

    private static void AddBack(
        BuildWish wish, Stock stock, InkSet inkSet, PrintedFace printed, bool both, bool stops, List<PlannedLayer> behind, List<string> because)
    {
        // The white in front serves both pictures, unless something dark or the opaque sheet lies between.
        bool ownWhite = both && (stops || stock.Light == SheetLight.Opaque);
        if (ownWhite && (wish.White ?? (stops ? WhiteSource.Flood : null)) is { } source)
            behind.AddRange(StackBuilder.Shared(White(wish, source, Viewer.Back), because));
        double percent = BackStrength.Of(wish, inkSet);
        behind.Add(new(InkGroup.Colour, both ? Viewer.Back : Viewer.Front, null, null, wish.BackPage ?? 1, percent, 0, false));
        Explain(wish, printed, both, ownWhite, percent, because);
    }

    private static void Explain(BuildWish wish, PrintedFace printed, bool both, bool ownWhite, double percent, List<string> because)
    {
        if (wish.DayNight)
        {
            because.Add("By day only the picture in front of the white is seen; lit, both are. The day picture (page 1) lies nearest to the viewer, then white, then the night picture (page 2).");
            because.Add(printed switch
            {
                PrintedFace.First => "On the first surface the lamp side is printed first: night picture, white, day picture.",
                PrintedFace.Second => "On the second surface the viewer's side is printed first: day picture, white, night picture.",
                _ => "White and day picture lie on the first surface, the night picture on the second.",
            });
        }
        else if (!both)
        {
            because.Add("The same picture lies before and behind the white: room light crosses the front ink twice, the lamp's light only once, so a second layer keeps the lit picture from washing out.");
            because.Add(wish.BackPercent is null
                ? Invariant($"Behind the white it is printed at {percent:0.#} %: with so much of this white, the lit picture then comes closest to the day picture.")
                : Invariant($"Behind the white it is printed at {percent:0.#} %, as asked for."));
        }
        else
        {
            because.Add(wish.Back == BackPicture.Own ? "Each viewer has a picture of his own: page 1 in front, page 2 on the back." : "Both viewers see the same picture, each right-reading.");
            because.Add(ownWhite ? "Each picture has its own white behind it." : "One white serves both pictures; against the light the one behind may show through.");
        }
    }
}
