using Laydown.Measures;
using Laydown.Plan.Log;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Log;

/// <summary>What a remake costs: material, ink and time at the shop's rates. Common practice, no source.</summary>
internal static class RemakeCosts
{
    /// <summary>The remake with what was not told filled in: area and ink of its pieces as planned, and the cost of all.</summary>
    public static RemakeNote Reckoned(RemakeNote remake, Laydown.Plan.Runs.Run run, Catalogue catalogue)
    {
        RemakeNote note = remake.AreaM2 == 0 && remake.InkMl == 0 && remake.Pieces > 0 ? remake with { AreaM2 = AreaM2(remake, run), InkMl = InkMl(remake, run) } : remake;
        if (note.Cost.Cents != 0 || !(note.AreaM2 is >= 0 and <= 1e6 && note.InkMl is >= 0 and <= 1e6 && note.Minutes is >= 0 and <= 1e6))
            return note;
        Stock? stock = catalogue.Stocks.FirstOrDefault(s => Is(s.Id, run.StockId));
        PressDescription? press = catalogue.Presses.FirstOrDefault(p => Is(p.Id, run.PressId));
        decimal perM2 = stock is null ? 0 : stock.Price.Units / (decimal)(stock.Kind == StockKind.Roll ? stock.WidthMm / 1000 : stock.Size.AreaM2);
        decimal perMl = InkPerMl(run, catalogue), perHour = (press?.Costs.PerHour.Units ?? 0) + catalogue.Rates.LabourPerHour.Units;
        Money material = Money.FromUnits(perM2 * (decimal)note.AreaM2), ink = Money.FromUnits(perMl * (decimal)note.InkMl), time = Money.FromUnits(perHour * (decimal)note.Minutes / 60m);
        return note with
        {
            Cost = material + ink + time,
            Because = Invariant($"{note.AreaM2:0.##} m² × {perM2:0.00} = {material}, {note.InkMl:0.#} ml × {perMl:0.0000} = {ink}, {note.Minutes:0.#} min × {perHour:0.00}/h = {time}"),
        };
    }

    // Material by the whole sheet: waste around a piece is lost with it.
    private static double AreaM2(RemakeNote remake, Laydown.Plan.Runs.Run run)
    {
        double sheets = run.Sheets.Sum(s => s.Repeats * s.Sheet.AreaM2);
        return Math.Round(sheets * Share(remake, run), 4);
    }

    private static double InkMl(RemakeNote remake, Laydown.Plan.Runs.Run run) => Math.Round(run.Inks.Sum(i => i.PrintedMl) * Share(remake, run), 3);

    private static double Share(RemakeNote remake, Laydown.Plan.Runs.Run run)
    {
        double area = run.Sheets.Sum(s => s.Repeats * s.Placements.Sum(p => p.Place.Size.AreaM2));
        double pieces = run.Sheets.Sum(s => s.Repeats * s.Placements.Where(p => Of(p.PieceId)).Sum(p => p.Place.Size.AreaM2));
        int count = remake.ItemId is null ? run.Items.Sum(i => i.Pieces) : run.Items.Where(i => Is(i.ItemId, remake.ItemId)).Sum(i => i.Pieces);
        return area > 0 && count > 0 ? pieces / area * remake.Pieces / count : 0;

        bool Of(string piece) => remake.ItemId is null || Is(piece.Split('/')[0], remake.ItemId);
    }

    private static decimal InkPerMl(Laydown.Plan.Runs.Run run, Catalogue catalogue)
    {
        string? set = catalogue.Conditions.FirstOrDefault(c => Is(c.Id, run.ConditionId))?.InkSetId;
        InkSet? inks = catalogue.InkSets.FirstOrDefault(s => Is(s.Id, set));
        double ml = run.Inks.Sum(i => i.PrintedMl);
        return inks is null || ml <= 0 ? 0 : run.Inks.Sum(i => (inks.Find(i.Role)?.PricePerLitre.Units ?? 0) * (decimal)i.PrintedMl) / (decimal)ml / 1000m;
    }

    private static bool Is(string? one, string? other) => string.Equals(one, other, StringComparison.Ordinal);
}
