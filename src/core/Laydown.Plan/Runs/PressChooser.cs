using Laydown.Measures;
using Laydown.Plan.Build;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Runs;

/// <summary>Chooses the cheapest press that can print an item: width, thickness, roll or lanes, layers, inks, a mode.</summary>
public static class PressChooser
{
    /// <summary>Chooses a press for an item.</summary>
    /// <returns>The choice, or the faults of every press that was asked.</returns>
    public static Reading<PressChoice> Choose(ReadyItem ready, PressRoom room)
    {
        Stock? stock = room.Stocks.FirstOrDefault(s => Is(s.Id, ready.Item.StockId));
        if (stock is null)
            return Refused(ready, "stockId", ready.Item.StockId, "the id of a stock the shop keeps");

        List<Reading<PressChoice>> asked = [.. room.Presses.SelectMany(p => Asked(ready, stock, p, room))];
        if (asked.Count == 0)
            return Refused(ready, "stockId", Invariant($"{stock.Name}, for which no print condition exists"), "a stock that a press is calibrated for");

        List<PressChoice> able = [.. asked.Where(a => a.IsTaken).Select(a => a.Value)];
        if (able.Count == 0)
            return Reading.Refused<PressChoice>([.. asked.SelectMany(a => a.Faults).Distinct()]);

        PressChoice best = able.OrderBy(a => a.PressCost).ThenBy(a => a.Press.Id, StringComparer.Ordinal).ThenBy(a => a.Condition.Id, StringComparer.Ordinal).First();
        return Reading.Of(best with
        {
            Because =
            [
                Invariant($"{best.Press.Name}: {best.PressCost:0.00} of press time for this item alone."),
                .. able.Where(a => a != best).Select(a => Invariant($"{a.Press.Name} could print it for {a.PressCost:0.00}.")),
                .. asked.Where(a => !a.IsTaken).Select(a => a.Faults[0].ToString()),
            ],
        });
    }

    private static IEnumerable<Reading<PressChoice>> Asked(ReadyItem ready, Stock stock, PressDescription press, PressRoom room)
    {
        foreach (PrintCondition condition in room.Conditions.Where(c => Is(c.PressId, press.Id) && c.StockIds.Contains(stock.Id, StringComparer.Ordinal)))
        {
            InkSet? inks = room.InkSets.FirstOrDefault(s => Is(s.Id, condition.InkSetId));
            string? tooBig = CannotTake(press, stock);
            if (inks is null)
                yield return Refused(ready, "condition", Invariant($"{condition.Id}, whose ink set {condition.InkSetId} is unknown"), "an ink set of the shop");
            else if (tooBig is not null)
                yield return Refused(ready, "stockId", tooBig, Invariant($"a stock that {press.Name} takes"));
            else
                yield return On(ready, stock, press, condition, inks, room.Bands);
        }
    }

    private static Reading<PressChoice> On(
        ReadyItem ready, Stock stock, PressDescription press, PrintCondition condition, InkSet inks, BandScore.Source? bands) =>
        StackBuilder.Derive(ready.Item.Build, stock, press, inks, Invariant($"item {ready.Item.Id}"), "/build").Then(stack =>
        {
            SizeMm sheet = SheetFor(ready, stock, press);
            ModeDemand demand = new(ready.Item.ViewingDistanceM, ready.SmallestTextPt, ready.SmallestModuleMm, stack, sheet) { Stock = stock };
            return ModeChooser.Choose(press, condition, inks, demand, bands).Then(choice =>
                Reading.Of(new PressChoice(press, condition, inks, stock, stack, choice, PressCost(ready, press, demand, press.FindMode(choice.ModeId)!), [])));
        });

    // A full sheet as it would lie on the belt; of a roll as much length as it is wide.
    private static SizeMm SheetFor(ReadyItem ready, Stock stock, PressDescription press)
    {
        if (stock.Kind == StockKind.Roll)
            return new(stock.WidthMm, Math.Max(1, Math.Min(stock.WidthMm, Math.Max(ready.Item.Printed.WidthMm, ready.Item.Printed.HeightMm))));
        return stock.WidthMm <= press.BeltWidthMm && stock.LengthMm <= press.MaxSheetLengthMm ? stock.Size : stock.Size.Turned();
    }

    private static decimal PressCost(ReadyItem ready, PressDescription press, ModeDemand demand, Mode mode)
    {
        double seconds = demand.LayersByFace.Sum(k => Scanning.Of(press, mode, demand.Sheet.WidthMm, demand.Sheet.HeightMm, k).Value.Seconds);
        double areaM2 = ready.Item.Printed.AreaM2 * ready.Item.Quantity;
        double minutes = press.Costs.SetUpMinutes + (seconds / 60 * areaM2 / demand.Sheet.AreaM2);
        return press.Costs.PerHour.Units * (decimal)minutes / 60m;
    }

    /// <summary>Why a press cannot take a stock, or null when it can.</summary>
    public static string? CannotTake(PressDescription press, Stock stock)
    {
        double thickest = stock.ThicknessMm + stock.ThicknessToleranceMm;
        if (thickest > press.MaxThicknessMm)
            return Invariant($"{stock.Name}, up to {thickest:0.##} mm thick; {press.Name} clears {press.MaxThicknessMm:0.#} mm");
        return stock.Kind switch
        {
            StockKind.Roll when press.Rolls.Count == 0 => Invariant($"{stock.Name}, a roll; {press.Name} takes boards only"),
            StockKind.Roll when press.Rolls.Max(r => r.MaxWidthMm) < stock.WidthMm =>
                Invariant($"{stock.Name}, {stock.WidthMm:0} mm wide; {press.Name} takes rolls to {press.Rolls.Max(r => r.MaxWidthMm):0} mm"),
            StockKind.Blank when press.MaxLanes == 0 => Invariant($"{stock.Name}, a blank; {press.Name} has no lanes"),
            StockKind.Roll => null,
            _ => Fits(stock.Size, press) || Fits(stock.Size.Turned(), press)
                ? null
                : Invariant($"{stock.Name}, {stock.Size}; {press.Name} takes {press.BeltWidthMm:0} × {press.MaxSheetLengthMm:0} mm"),
        };
    }

    private static bool Fits(SizeMm size, PressDescription press) => size.WidthMm <= press.BeltWidthMm && size.HeightMm <= press.MaxSheetLengthMm;

    private static Reading<PressChoice> Refused(ReadyItem ready, string field, string found, string wanted) =>
        Reading.Refused<PressChoice>(new InputFault(Invariant($"item {ready.Item.Id}"), null, field, found, wanted));

    private static bool Is(string one, string other) => string.Equals(one, other, StringComparison.Ordinal);
}
