using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Press.Stocks;

namespace Laydown.Plan.StockRoom;

/// <summary>Which rolls a run takes: one that holds all of it, else whole sections between cuts, each from one roll. A piece is never parted between two rolls, and two that lie side by side are two lots. Common practice, no source.</summary>
internal static class RollPicks
{
    /// <summary>Metres of each roll, or what is missing.</summary>
    /// <param name="run">The run.</param>
    /// <param name="stock">The roll.</param>
    /// <param name="own">Its lots, oldest first.</param>
    /// <param name="sheets">What is printed on it.</param>
    /// <param name="left">Metres not kept back yet.</param>
    public static (IReadOnlyDictionary<string, decimal> Picked, InputFault? Fault) Of(Runs.Run run, Stock stock, List<StockLot> own, IEnumerable<SheetLayout> sheets, decimal left)
    {
        List<SheetLayout> all = [.. sheets];
        if (run.Belt.Lanes.Count > 1 && all.Count > 1)
            return SideBySide(run, stock, own, all);
        Dictionary<string, decimal> picked = new(StringComparer.Ordinal);
        if (own.FirstOrDefault(l => l.Free >= left) is { } whole)
        {
            picked[whole.Id] = left;
            return (picked, null);
        }

        if (own.Sum(l => l.Free) < left)
            return (picked, StockPicks.Missing(run, stock, own, left - own.Sum(l => l.Free)));

        // Longest sections first, each from the oldest roll that still holds it.
        decimal given = 0;
        foreach (decimal metres in all.SelectMany(Sections).OrderDescending())
        {
            decimal wanted = Math.Min(metres, left - given);
            if (wanted <= 0)
                break;
            if (own.FirstOrDefault(l => l.Free - picked.GetValueOrDefault(l.Id) >= wanted) is not { } lot)
            {
                return (new Dictionary<string, decimal>(), new("stock room", null, "quantity",
                    Invariant($"no roll of {stock.Id} with {wanted} m in one length left for run {run.Id}; most is {own.Max(l => l.Free - picked.GetValueOrDefault(l.Id))} m"), "a roll that holds it, or a layout in shorter sections"));
            }

            picked[lot.Id] = picked.GetValueOrDefault(lot.Id) + wanted;
            given += wanted;
        }

        return (picked, null);
    }

    private static (IReadOnlyDictionary<string, decimal> Picked, InputFault? Fault) SideBySide(Runs.Run run, Stock stock, List<StockLot> own, List<SheetLayout> sheets)
    {
        Dictionary<string, decimal> picked = new(StringComparer.Ordinal);
        foreach (decimal metres in sheets.Select(LengthM).OrderDescending())
        {
            // What is kept back for the run on a roll already counts as that roll.
            if (own.FirstOrDefault(l => !picked.ContainsKey(l.Id) && l.Free + l.ReservedFor(run.Id) >= metres) is not { } lot)
            {
                return (new Dictionary<string, decimal>(), new("stock room", null, "quantity",
                    Invariant($"{picked.Count} of the {sheets.Count} rolls of {stock.Id} that lie side by side in run {run.Id}"), Invariant($"{sheets.Count} rolls with {metres} m each")));
            }

            picked[lot.Id] = Math.Max(0, metres - lot.ReservedFor(run.Id));
        }

        return (picked.Where(p => p.Value > 0).ToDictionary(StringComparer.Ordinal), null);
    }

    /// <summary>Lengths a run takes in one, m: its sections between cuts across, or each of two rolls that lie side by side.</summary>
    public static IEnumerable<decimal> SectionsOf(Runs.Run run, Stock stock)
    {
        List<SheetLayout> all = [.. StockPicks.SheetsOf(run, stock)];
        return run.Belt.Lanes.Count > 1 && all.Count > 1 ? all.Select(LengthM) : all.SelectMany(Sections);
    }

    private static decimal LengthM(SheetLayout sheet) => Math.Ceiling((decimal)sheet.Sheet.HeightMm / 10m) / 100m;

    // Lengths between cuts across, whole centimetres up.
    private static IEnumerable<decimal> Sections(SheetLayout sheet)
    {
        double[] ends = [0, .. sheet.CutsAcrossMm ?? [], sheet.Sheet.HeightMm];
        IEnumerable<decimal> lengths = ends.Skip(1).Zip(ends, (end, start) => Math.Ceiling((decimal)(end - start) / 10m) / 100m).Where(m => m > 0);
        return Enumerable.Repeat(lengths, sheet.Repeats).SelectMany(l => l);
    }
}
