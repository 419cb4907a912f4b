using Laydown.Colour.Charts;
using Laydown.Measures;
using Laydown.Optics.Fits;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Colour;

/// <summary>Makes a chart for a print condition, laid on its stock: whole or not at all.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="catalogue">Its stocks.</param>
/// <param name="files">Reads conditions.</param>
/// <param name="charts">Writes charts.</param>
/// <param name="clock">Tells the time.</param>
public sealed class MakeChart(ShopFolder folder, Catalogue catalogue, IColourFiles files, IChartFiles charts, TimeProvider clock)
{
    /// <summary>Aperture of a hand-held instrument, mm (from memory).</summary>
    private const double Aperture = 4;

    private const double RollLengthMm = 1000;

    /// <summary>Makes the chart.</summary>
    /// <param name="wish">What is wanted.</param>
    /// <param name="cancellation">Stops; nothing stays then.</param>
    public Reading<MadeChart> Make(ChartWish wish, CancellationToken cancellation) => new ConditionShelf(folder, files).Find(wish.ConditionId).Then(found =>
    {
        PrintCondition condition = found.Condition;
        ChartInk[] inks = [.. condition.Inks.Where(i => i.Role is not (InkRole.White or InkRole.Clear)).Select(i => new ChartInk(InkRoleNames.Of(i.Role)))];
        double total = Math.Min(condition.TotalLimitPercent, 100.0 * inks.Length);
        string id = Invariant($"{condition.Id}-{ChartDesign.NameOf(wish.Kind).Replace(' ', '-')}-{wish.Seed}");
        if (wish.Kind == ChartKind.InkOptics)
        {
            if (condition.Inks.All(i => i.Role != InkRole.White))
                return Reading.Refused<MadeChart>(new InputFault("chart", null, "inks", Invariant($"no white in {condition.Id}"), "a print condition with a white ink"));
            return SeeThrough(condition, wish.StockId).Then(stock => OpticsChart.Make([.. inks.Select(i => i.Name)], OpticsChart.MostSteps)
                .Then(chart => Laid(chart, OpticsForm(stock, wish.Seed), stock, id, cancellation)));
        }

        return StockOf(condition, wish.StockId).Then(stock => ChartDesign.Make(wish.Kind, inks, total, wish.Seed)
            .Then(chart => Laid(chart, ChartSheetForm.For(SheetOf(stock), wish.Way, wish.Seed), stock, id, cancellation)));
    });

    /// <summary>Makes the swatch sheet of solved named colours.</summary>
    internal Reading<MadeChart> Swatches(PrintCondition condition, IReadOnlyList<SolvedColour> colours, CancellationToken cancellation)
    {
        Chart chart = new(
            "named colours", ChartKind.Verify, colours[0].InkNames, condition.TotalLimitPercent,
            [.. colours.Select(c => new ChartPatch(c.Colour.Id, c.Colour.Name, [.. c.Found.Inks.Select(i => Math.Floor(i * 255) / 255)]))]);
        return StockOf(condition, null).Then(stock => Laid(
            chart, new(SheetOf(stock), 15, new(40, 30), 6, ReadingWay.Hand, 1) { Named = true }, stock, condition.Id + "-named-colours", cancellation));
    }

    private Reading<MadeChart> Laid(Chart chart, ChartSheetForm form, Stock stock, string id, CancellationToken cancellation) =>
        ChartLayout.Make(chart, form).Then(sheets => charts.Write(chart, sheets, folder.Charts, id, clock.GetLocalNow(), cancellation)
            .Then(paths => Reading.Of(new MadeChart(
                id, chart.InkNames, chart.Patches.Count, sheets.Count, stock.Name, [.. paths.Select(p => Path.GetFileName(p))]))));

    private Reading<Stock> StockOf(PrintCondition condition, string? stockId) =>
        catalogue.Stocks.FirstOrDefault(s => s.Id == (stockId ?? condition.StockIds[0])) is { } stock && condition.StockIds.Contains(stock.Id)
            ? Reading.Of(stock)
            : Reading.Refused<Stock>(new InputFault("chart", null, "stock", Invariant($"'{stockId ?? condition.StockIds[0]}'"), "one of " + string.Join(", ", condition.StockIds)));

    // A stock that light comes through: the one asked for, else the clearest of the condition.
    private Reading<Stock> SeeThrough(PrintCondition condition, string? stockId)
    {
        string? clearest = stockId ?? catalogue.Stocks.Where(s => condition.StockIds.Contains(s.Id) && s.Light != SheetLight.Opaque)
            .OrderBy(s => s.Light != SheetLight.Clear).ThenBy(s => s.ThicknessMm).FirstOrDefault()?.Id;
        return StockOf(condition, clearest).Then(stock => stock.Light != SheetLight.Opaque
            ? Reading.Of(stock)
            : Reading.Refused<Stock>(new InputFault(
                "chart", null, "stock", Invariant($"{stock.Id}, which lets no light through"), "a clear sheet, best a thin one of the material that will be printed")));
    }

    // Wide patches: light that is sent back inside a clear sheet lands aside and should land in the same patch.
    private static ChartSheetForm OpticsForm(Stock stock, int seed)
    {
        double side = Math.Ceiling(Math.Max(12, Aperture + (2 * OpticsChecks.SidewaysMm(Math.Min(stock.ThicknessMm, 10)))));
        return new(SheetOf(stock), 15, new(side, side), 4, ReadingWay.Hand, seed);
    }

    private static SizeMm SheetOf(Stock stock) =>
        stock.Kind == StockKind.Roll ? new(stock.WidthMm, RollLengthMm) : stock.Size;
}
