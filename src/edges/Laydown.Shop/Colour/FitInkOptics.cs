using Laydown.Colour.Readings;
using Laydown.Measures;
using Laydown.Optics.Fits;
using Laydown.Optics.Looks;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Stocks;
using Laydown.Shop.Layers;
using Laydown.Shop.Run;

namespace Laydown.Shop.Colour;

/// <summary>Fits the optics of an ink set to readings of its chart and keeps both: whole or not at all.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="files">Reads and writes.</param>
/// <param name="stocks">Stocks of the shop.</param>
/// <param name="clock">Tells the day.</param>
public sealed class FitInkOptics(ShopFolder folder, IColourFiles files, IReadOnlyList<Stock> stocks, TimeProvider clock)
{
    /// <summary>Fits and saves; on any refusal or cancellation the ink set stays as it was.</summary>
    /// <param name="conditionId">The print condition the chart was printed by.</param>
    /// <param name="wish">The readings.</param>
    /// <param name="cancellation">Stops between rounds.</param>
    public async Task<Reading<InkOpticsOutcome>> FitAsync(string conditionId, InkOpticsWish wish, CancellationToken cancellation)
    {
        ConditionShelf shelf = new(folder, files);
        Reading<(string Path, PrintCondition Condition)> found = shelf.Find(conditionId);
        if (!found.IsTaken)
            return Reading.Refused<InkOpticsOutcome>(found.Faults);
        PrintCondition condition = found.Value.Condition;
        string setPath = Path.Combine(folder.Catalogue, "inks", condition.InkSetId + ".json");
        Reading<(Stock Stock, LookSheet Sheet, InkSet Inks)> place = StockOf(condition, wish.StockId)
            .Then(stock => StackLights.SheetOf(stock).Then(sheet => files.InkSet(setPath).Then(inks => Reading.Of((stock, sheet, inks)))));
        if (!place.IsTaken)
            return Reading.Refused<InkOpticsOutcome>(place.Faults);

        DateOnly day = DateOnly.FromDateTime(clock.GetLocalNow().Date);
        Reading<InkOpticsOutcome> fit = await Task.Run(
            () => Fitted(files, wish, place.Value.Stock, place.Value.Sheet, place.Value.Inks, day, cancellation), cancellation);
        if (fit.IsTaken)
            await KeepAsync(fit.Value, setPath, place.Value.Inks, wish.OwnOnly ? found.Value : null, cancellation);
        return fit;
    }

    /// <summary>Fits without a shop: the sheet is what its bare readings say, inks keep the names they have in the files.</summary>
    /// <param name="files">Reads the files.</param>
    /// <param name="wish">The readings.</param>
    /// <param name="day">Day written into the result.</param>
    /// <param name="cancellation">Stops between rounds.</param>
    public static Task<Reading<InkOpticsOutcome>> FitFilesAsync(IColourFiles files, InkOpticsWish wish, DateOnly day,
        CancellationToken cancellation) =>
        Task.Run(() => Fitted(files, wish, null, LookSheet.Clear(0.92), null, day, cancellation), cancellation);

    private static Reading<InkOpticsOutcome> Fitted(
        IColourFiles files, InkOpticsWish wish, Stock? stock, LookSheet sheet, InkSet? inks, DateOnly day, CancellationToken cancellation)
    {
        List<InputFault> faults = [];
        List<ReadingSet> sets = [];
        foreach (InkOpticsFile file in wish.Files)
        {
            Reading<ReadingSet> read = files.Readings(file.Path);
            faults.AddRange(read.Faults);
            if (read.IsTaken)
                sets.Add(file.Behind == Behind.Unsaid ? read.Value : read.Value with { Patches = [.. read.Value.Patches.Select(p => p with { Behind = file.Behind })] });
        }

        if (faults.Count > 0)
            return Reading.Refused<InkOpticsOutcome>(faults);
        return OpticsReadings.From(sets).Then(table => InkOpticsFit.Fit(table, sheet, cancellation).Then(fitted =>
        {
            List<Finding> findings = [.. fitted.Findings];
            if (stock is not null && wish.ApertureMm is { } aperture && wish.PatchMm is { } patch)
                findings.AddRange(OpticsChecks.Aperture(aperture, patch, stock.ThicknessMm));
            string name = string.Join(", ", sets.Select(s => s.Name).Distinct());
            return InkOpticsRecord.Of(fitted, inks, name, day, findings).Then(optics => Reading.Of(
                new InkOpticsOutcome(optics, fitted, table.Backings, findings, table.Notes, sets)));
        }));
    }

    // Readings and optics lie under names of their content before anything names them.
    private async Task KeepAsync(
        InkOpticsOutcome fit, string setPath, InkSet inks, (string Path, PrintCondition Condition)? own, CancellationToken cancellation)
    {
        foreach ((int i, ReadingSet set) in fit.Readings.Index())
            await WholeFile.WriteAsync(Path.Combine(folder.Optics, Invariant($"{fit.Optics.Id}.readings-{i + 1}.txt")),
                files.ReadingsText(set), cancellation);
        await WholeFile.WriteAsync(Path.Combine(folder.Optics, fit.Optics.Id + ".json"), files.InkOpticsText(fit.Optics), cancellation);
        if (own is { } condition)
            await WholeFile.WriteAsync(condition.Path, files.ConditionText(condition.Condition with { OpticsId = fit.Optics.Id }),
                cancellation);
        else
            await WholeFile.WriteAsync(setPath, files.InkSetText(inks with { OpticsId = fit.Optics.Id }), cancellation);
    }

    private Reading<Stock> StockOf(PrintCondition condition, string? stockId)
    {
        Stock? stock = stockId is null
            ? stocks.Where(s => condition.StockIds.Contains(s.Id) && s.Light != SheetLight.Opaque).OrderBy(s => s.Light != SheetLight.Clear).ThenBy(s => s.ThicknessMm).FirstOrDefault()
            : stocks.FirstOrDefault(s => s.Id == stockId);
        return stock is not null
            ? Reading.Of(stock)
            : Reading.Refused<Stock>(new InputFault(
                "catalogue", null, "stock", stockId is null ? Invariant($"no clear or opal stock in {condition.Id}") : Invariant($"'{stockId}'"),
                "a stock that light comes through: " + string.Join(", ",
                    stocks.Where(s => s.Light != SheetLight.Opaque).Select(s => s.Id))));
    }
}
