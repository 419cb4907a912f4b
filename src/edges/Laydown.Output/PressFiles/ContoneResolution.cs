using Laydown.Artwork.Pages;
using Laydown.Layout.Sheets;
using Laydown.Plan.Orders;
using Laydown.Press.Machines;
using Laydown.Shop.Orders;

namespace Laydown.Output.PressFiles;

/// <summary>The resolution press files are made at, and why.</summary>
/// <param name="Ppi">Resolution, ppi.</param>
/// <param name="Because">Why it is this one, in a sentence.</param>
internal sealed record ContoneResolution(int Ppi, string Because)
{
    /// <summary>Below this a picture seen from a few metres shows its pixels; common practice, no source.</summary>
    private const int LeastPpi = 72;

    /// <summary>Pixels a module of a bar code needs so that its edges stay within a quarter of it; common practice, no source.</summary>
    private const int PixelsPerModule = 4;

    /// <summary>
    /// The mode's contone resolution; where bar codes of the items need more, the next higher divisor of the mode's dpi that is enough. Where a sheet or
    /// an item would have more pixels than the budget, the next lower divisor, but never below what the codes need, nor below 72 ppi.
    /// </summary>
    public static ContoneResolution For(Mode mode, IReadOnlyList<SheetLayout> sheets, IReadOnlyList<ItemRecord> items, long pixelBudget)
    {
        double needed = Math.Max(LeastPpi, items.Select(i => Math.Max(CodesNeed(i), MarksNeed(i))).DefaultIfEmpty(0).Max());
        double areaM2 = sheets.Select(s => s.Sheet.AreaM2).Concat(items.Select(i => i.Item.Printed.AreaM2)).DefaultIfEmpty(0).Max();
        int ppi = Enough(mode, items.Select(CodesNeed).DefaultIfEmpty(0).Max());
        if (ppi > mode.ContonePpi)
        {
            return new(ppi, Invariant(
                $"{ppi} ppi instead of {mode.ContonePpi} ppi of mode {mode.Id}: the narrowest bar code module wants {PixelsPerModule} pixels"));
        }

        for (int lower = ppi - 1; areaM2 * 1e6 * (ppi / 25.4) * (ppi / 25.4) > pixelBudget && lower >= needed; lower--)
        {
            if (mode.ScanDpi % lower == 0 && mode.FeedDpi % lower == 0)
                ppi = lower;
        }

        string because = ppi == mode.ContonePpi
            ? Invariant($"{ppi} ppi, the contone resolution of mode {mode.Id}")
            : Invariant($"{ppi} ppi instead of {mode.ContonePpi} ppi of mode {mode.Id}: a sheet stays near {pixelBudget / 1e6:0} million pixels");
        return new(ppi, because);
    }

    /// <summary>The mode's contone resolution, or the next higher common divisor of its dpi that reaches what is needed; its lower dpi where none does.</summary>
    private static int Enough(Mode mode, double neededPpi)
    {
        if (neededPpi <= mode.ContonePpi)
            return mode.ContonePpi;
        int most = Math.Min(mode.ScanDpi, mode.FeedDpi);
        for (int ppi = (int)Math.Ceiling(neededPpi); ppi < most; ppi++)
        {
            if (mode.ScanDpi % ppi == 0 && mode.FeedDpi % ppi == 0)
                return ppi;
        }

        return most;
    }

    private static double CodesNeed(ItemRecord item)
    {
        IEnumerable<ArtworkPage> pages = item.Artwork?.Pages ?? [];
        return pages.SelectMany(p => p.Codes.Select(c => c.ModuleMm * Scale(item.Item, p)))
            .Where(module => module > 0)
            .Select(module => PixelsPerModule * 25.4 / module)
            .DefaultIfEmpty(0)
            .Max();
    }

    // Codes that name pieces stand on whole pixels, so two for a module will do; longer ids need larger codes.
    private static double MarksNeed(ItemRecord item)
    {
        if (item.Item.Marks is not { Codes: true } wish)
            return 0;
        int modules = item.Item.Id.Length <= 10 ? 29 : item.Item.Id.Length <= 22 ? 33 : 41;
        return 2 * 25.4 * modules / wish.CodeMm;
    }

    private static double Scale(Item item, ArtworkPage page) => page.TrimMm.WidthMm > 0 ? item.WidthMm / page.TrimMm.WidthMm : 1;
}
