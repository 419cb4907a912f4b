using Laydown.Geometry.Shapes;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Laydown.Press.Stocks;

namespace Laydown.Shop.Layout;

/// <summary>Chooses among the sizes a board is kept in: offcuts that take whole items at less cost come first, the rest goes to the size that costs least.</summary>
/// <remarks>Each size gets a run of its own, because lays, zones and counts of the set-up belong to one size; the press's time to set up is weighed against the material saved.</remarks>
/// <param name="stocks">What the shop keeps.</param>
/// <param name="contourOf">Contour of an item that is cut to one, by its id; null for none.</param>
internal sealed class StockSizes(IReadOnlyList<Stock> stocks, Func<string, Shape?> contourOf)
{
    private readonly Dictionary<string, Shape?> contours = new(StringComparer.Ordinal);

    // Sheets that some items take of a size, asked for again and again; null where they do not fit.
    private readonly Dictionary<string, int?> counted = new(StringComparer.Ordinal);

    // What earlier runs of this planning took, so that one offcut is not promised twice.
    private readonly Dictionary<string, int> taken = new(StringComparer.Ordinal);

    /// <summary>The run itself where there is one size; else runs on several sizes that hold all its items between them.</summary>
    public IReadOnlyList<FormedRun> Split(FormedRun run, CancellationToken cancellation)
    {
        IReadOnlyList<Stock> sizes = [.. stocks
            .Where(s => string.Equals(s.OtherSizeOf, run.Stock.Id, StringComparison.Ordinal) && Left(s) > 0 && PressChooser.CannotTake(run.Press, s) is null)
            .OrderBy(s => s.Price.Units / (decimal)s.Size.AreaM2).ThenBy(s => s.Size.AreaM2).ThenBy(s => s.Id, StringComparer.Ordinal)];
        if (run.Stock.Kind != StockKind.Board || sizes.Count == 0)
            return [run];

        List<FormedRun> runs = [];
        FormedRun rest = run;
        foreach (Stock size in sizes)
        {
            if (rest.Items.Count == 0)
                break;
            if (Filled(rest, size, sizes, cancellation) is not { } filled)
                continue;
            runs.Add(Take(filled, cancellation));
            HashSet<string> gone = [.. filled.Items.Select(i => i.Ready.Item.Id)];
            rest = rest with { Items = [.. rest.Items.Where(i => !gone.Contains(i.Ready.Item.Id))] };
        }

        if (rest.Items.Count > 0)
            runs.Add(Take(Cheapest(rest, sizes, cancellation).Run, cancellation));
        return runs;
    }

    // Largest items first, each as long as all of it still finds room on the sheets there are; only where that costs less than without.
    private FormedRun? Filled(FormedRun rest, Stock size, IReadOnlyList<Stock> sizes, CancellationToken cancellation)
    {
        List<FormedItem> taking = [];
        foreach (FormedItem item in rest.Items.OrderByDescending(i => i.Ready.Item.Printed.AreaM2 * i.Ready.Item.Quantity).ThenBy(i => i.Ready.Item.Id, StringComparer.Ordinal))
            if (CostOf(On(rest, size, [.. taking, item]), cancellation) is not null)
                taking.Add(item);

        if (taking.Count == 0)
            return null;
        FormedRun filled = On(rest, size, [.. rest.Items.Where(taking.Contains)]);
        FormedRun other = rest with { Items = [.. rest.Items.Where(i => !taking.Contains(i))] };
        decimal? with = CostOf(filled, cancellation) + CostBeside(filled, other, sizes, cancellation);
        return Cheapest(rest, sizes, cancellation).Cost is { } without && with >= without ? null : filled;
    }

    // What the others cost once this run has taken its sheets; a second run is set up once more.
    private decimal? CostBeside(FormedRun filled, FormedRun other, IReadOnlyList<Stock> sizes, CancellationToken cancellation)
    {
        if (other.Items.Count == 0)
            return 0;
        int before = taken.GetValueOrDefault(filled.Stock.Id);
        Take(filled, cancellation);
        decimal? cost = Cheapest(other, sizes, cancellation).Cost;
        taken[filled.Stock.Id] = before;
        return cost + (other.Press.Costs.PerHour.Units * (decimal)other.Press.Costs.SetUpMinutes / 60m);
    }

    // The board itself where no size takes all: planning then tells what does not fit.
    private (FormedRun Run, decimal? Cost) Cheapest(FormedRun run, IReadOnlyList<Stock> sizes, CancellationToken cancellation)
    {
        (FormedRun Run, decimal? Cost) best = (run, CostOf(run, cancellation));
        foreach (Stock size in sizes)
        {
            FormedRun on = On(run, size, run.Items);
            if (CostOf(on, cancellation) is { } cost && (best.Cost is null || cost < best.Cost))
                best = (on, cost);
        }

        return best;
    }

    private static FormedRun On(FormedRun run, Stock size, IReadOnlyList<FormedItem> items) => run with
    {
        Stock = size,
        Items = items,
        Because = [.. run.Because, Invariant($"{size.Name} in place of {run.Stock.Name}: its material costs less for these pieces.")],
    };

    /// <summary>Price of the sheets, or null where a piece finds no place or there are too few sheets.</summary>
    private decimal? CostOf(FormedRun run, CancellationToken cancellation) =>
        SheetsOf(run, cancellation) is { } sheets && sheets <= Left(run.Stock) ? run.Stock.Price.Units * sheets : null;

    // A quick look: the layout that is planned later takes no more.
    private int? SheetsOf(FormedRun run, CancellationToken cancellation)
    {
        string key = Invariant($"{run.Press.Id}|{run.Stock.Id}|{string.Join('|', run.Items.Select(i => i.Ready.Item.Id))}");
        if (counted.TryGetValue(key, out int? known))
            return known;
        Dictionary<string, Shape> shapes = run.Items.Select(i => (i.Ready.Item.Id, Area: ContourOf(i.Ready.Item)))
            .Where(c => c.Area is not null).ToDictionary(c => c.Id, c => c.Area!, StringComparer.Ordinal);
        Reading<LaidOut> laid = SheetLayouts.Of(run, shapes, cancellation, tries: 0);
        return counted[key] = laid.IsTaken && laid.Value.Unplaced.Count == 0 ? laid.Value.Sheets.Sum(s => s.Repeats) : null;
    }

    private Shape? ContourOf(Item item)
    {
        if (!contours.TryGetValue(item.Id, out Shape? area))
            contours[item.Id] = area = contourOf(item.Id);
        return area;
    }

    private FormedRun Take(FormedRun run, CancellationToken cancellation)
    {
        taken[run.Stock.Id] = taken.GetValueOrDefault(run.Stock.Id) + (SheetsOf(run, cancellation) ?? 0);
        return run;
    }

    private int Left(Stock stock) => stock.OnHand - taken.GetValueOrDefault(stock.Id);
}
