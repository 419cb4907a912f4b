using Laydown.Geometry.Shapes;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Press.Stocks;

namespace Laydown.Shop.Layout;

/// <summary>Chooses among the widths a roll is kept in, and between one roll and two side by side: what costs least in material and press time.</summary>
/// <remarks>
/// A width that would part an item into more panels than the ordered one is left alone. Two rolls side by side are looked at where two stations of
/// the press take them and nothing is parted or repeated in even steps; of one stock two rolls are there where more is on hand than one roll holds.
/// </remarks>
/// <param name="stocks">What the shop keeps.</param>
/// <param name="contourOf">Contour of an item that is cut to one, by its id; null for none.</param>
internal sealed class RollWidths(IReadOnlyList<Stock> stocks, Func<string, Shape?> contourOf)
{
    internal static readonly IReadOnlyDictionary<string, Shape> NoContours = new Dictionary<string, Shape>();

    // What earlier runs of this planning took, mm by stock, so that one length is not promised twice.
    private readonly Dictionary<string, double> taken = new(StringComparer.Ordinal);

    /// <summary>The run on the rolls that cost least; the run itself where it is no roll or there is no choice.</summary>
    public FormedRun Chosen(FormedRun run, CancellationToken cancellation)
    {
        if (run.Stock.Kind != StockKind.Roll)
            return run;
        IReadOnlyList<Stock> widths = [run.Stock, .. stocks
            .Where(s => string.Equals(s.OtherSizeOf, run.Stock.Id, StringComparison.Ordinal) && s.OnHand > 0 && PressChooser.CannotTake(run.Press, s) is null)
            .OrderBy(s => s.Id, StringComparer.Ordinal)];
        IReadOnlyList<FormedRun> ways = [.. widths.Select(w => run with { Stock = w }), .. Pairs(run, widths)];
        if (ways.Count == 1)
            return run;

        Tried[] tried = [.. ways.Select(w => TriedOn(w, cancellation)).OfType<Tried>()];
        int panels = tried.Where(t => t.Run.Stock == run.Stock && t.Run.Beside.Count == 0).Select(t => t.Panels).DefaultIfEmpty(int.MaxValue).First();
        Tried? best = tried.Where(t => t.Panels <= panels).MinBy(t => t.Cost);
        if (best is null)
            return run;
        foreach ((string stock, double length) in best.Takes)
            taken[stock] = taken.GetValueOrDefault(stock) + length;
        return best.Run.Stock == run.Stock && best.Run.Beside.Count == 0 ? run : best.Run with { Because = [.. run.Because, Reason(best, tried, run)] };
    }

    private static string Reason(Tried best, Tried[] tried, FormedRun run)
    {
        Tried? plain = tried.FirstOrDefault(t => t.Run.Stock == run.Stock && t.Run.Beside.Count == 0);
        string rather = plain is null ? "takes what it cannot" : Invariant($"material and press time {best.Cost:0.00} in place of {plain.Cost:0.00}");
        return best.Run.Beside.Count == 0
            ? Invariant($"{best.Run.Stock.Name} in place of {run.Stock.Name}: {rather}.")
            : Invariant($"Two rolls side by side, {best.Run.Stock.Name} and {best.Run.Beside[0].Name}, in place of one: {rather}.");
    }

    // Either may lie on either side.
    private static IEnumerable<FormedRun> Pairs(FormedRun run, IReadOnlyList<Stock> widths)
    {
        if (run.Items.Any(i => i.Ready.Item is { Repeat: not null } or { Panels: not null }))
            return [];
        return from left in widths
               from right in widths
               where left != right || left.OnHand * 1000.0 > left.LengthMm
               where RollPair.Of(run.Press, left, right) is not null
               select run with { Stock = left, Beside = [right] };
    }

    private Tried? TriedOn(FormedRun run, CancellationToken cancellation)
    {
        Dictionary<string, Shape> contours = run.Items.Select(i => (i.Ready.Item.Id, Area: contourOf(i.Ready.Item.Id)))
            .Where(c => c.Area is not null).ToDictionary(c => c.Id, c => c.Area!, StringComparer.Ordinal);
        Reading<LaidOut> laid = SheetLayouts.Of(run, contours, cancellation, tries: 0);
        if (!laid.IsTaken || laid.Value.Unplaced.Count > 0 || RollSheets.IsPair(laid.Value.Sheets) != run.Beside.Count > 0)
            return null;
        IReadOnlyList<SheetLayout> sheets = laid.Value.Sheets;
        bool parted = sheets.Any(s => s.Placements.Any(p => p.Part is not null));
        Dictionary<string, double> takes = sheets.GroupBy(s => s.StockId ?? run.Stock.Id, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Sum(s => s.Repeats * s.Sheet.HeightMm), StringComparer.Ordinal);
        if ((parted && run.Beside.Count > 0) || takes.Any(t => t.Value + taken.GetValueOrDefault(t.Key) > StockOf(run, t.Key).OnHand * 1000.0))
            return null;
        decimal material = takes.Sum(t => StockOf(run, t.Key).Price.Units * (decimal)t.Value / 1000m);
        return new(run, takes, sheets.SelectMany(s => s.Placements).Select(p => p.PieceId).Distinct(StringComparer.Ordinal).Count(), material + PressTime(run, sheets, laid.Value.Belt));
    }

    private static Stock StockOf(FormedRun run, string id) => run.Beside.Prepend(run.Stock).First(s => s.Id == id);

    private static decimal PressTime(FormedRun run, IReadOnlyList<SheetLayout> sheets, BeltPlace belt)
    {
        double left = belt.Lanes.Min(l => l.StartMm), right = belt.Lanes.Max(l => l.StartMm + l.WidthMm);
        double lengthMm = run.Beside.Count > 0 ? sheets.Max(s => s.Sheet.HeightMm) : sheets.Sum(s => s.Repeats * s.Sheet.HeightMm);
        return PressMinutes.Printing(run, new(right - left, lengthMm), 1) + (PressMinutes.Loading(run.Press) * belt.Lanes.Count);
    }

    private sealed record Tried(FormedRun Run, IReadOnlyDictionary<string, double> Takes, int Panels, decimal Cost);
}
