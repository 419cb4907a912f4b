using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Runs;

/// <summary>Groups ready items into runs: items of several orders go together only where stock, stack, print condition and mode agree.</summary>
public static class RunFormer
{
    /// <summary>Forms runs. Pure: the order of the items does not matter.</summary>
    /// <param name="ready">Items that passed their checks.</param>
    /// <param name="room">Presses, inks, stocks, conditions.</param>
    public static FormedRuns Form(IReadOnlyList<ReadyItem> ready, PressRoom room)
    {
        List<(ReadyItem Item, Reading<PressChoice> Choice)> asked =
            [.. ready.OrderBy(r => r.Item.Due).ThenBy(r => r.Item.Id, StringComparer.Ordinal).Select(r => (r, PressChooser.Choose(r, room)))];
        List<FormedRun> runs = [.. asked.Where(a => a.Choice.IsTaken)
            .GroupBy(a => KeyOf(a.Item.Item, a.Choice.Value), StringComparer.Ordinal)
            .Select(g => Formed([.. g.Select(a => (a.Item, a.Choice.Value))]))];
        return new(runs, [.. asked.Where(a => !a.Choice.IsTaken).Select(a => new UnformedItem(a.Item, a.Choice.Faults))]);
    }

    // Sheets of a run are turned one way, and those whose faces share a file go through the press by themselves.
    private static string KeyOf(Item item, PressChoice choice) => string.Join('|',
        choice.Press.Id, choice.Condition.Id, KeyOf(choice.Stock), choice.Mode.ModeId, KeyOf(choice.Stack)) + (item.Turn is { } turn ? Invariant($"|{turn.Way} {turn.About}") : "");

    // Blanks of several sizes lie side by side where the material and its thickness are the same: one head gap and one vacuum suit all.
    private static string KeyOf(Stock stock) => stock.Kind == StockKind.Blank
        ? Invariant($"blanks {stock.Material} {stock.ThicknessMm} {stock.ThicknessToleranceMm} {stock.Light}")
        : stock.Id;

    // Beyond the stack's own key, pieces share a run only where the same layers are mirrored and lamp and viewers are the same: the operator checks
    // each kind in another way.
    private static string KeyOf(LayerStack stack) => Invariant(
        $"{stack.Key}{(stack.Lit ? " lit" : "")} {stack.SeenFrom} {string.Concat(stack.Layers.Select(l => l.IsFlood ? '-' : l.Mirrored ? 'm' : 'r'))}");

    private static FormedRun Formed(IReadOnlyList<(ReadyItem Item, PressChoice Choice)> members)
    {
        PressChoice first = members[0].Choice;
        List<string> because = [.. first.Because];
        if (members.Count > 1)
        {
            int orders = members.Select(m => m.Item.OrderId).Distinct(StringComparer.Ordinal).Count();
            string stock = members.Select(m => m.Choice.Stock.Id).Distinct(StringComparer.Ordinal).Skip(1).Any() ? "same material and thickness" : "same stock";
            because.Add(Invariant($"{members.Count} items of {orders} order(s) go together: {stock}, same layers, same print condition, same mode."));
        }

        IEnumerable<Stock> others = members.Select(m => m.Choice.Stock).DistinctBy(s => s.Id, StringComparer.Ordinal).Skip(1);
        return new(first.Press, first.Condition, first.InkSet, first.Stock, first.Stack, first.Mode.ModeId,
            [.. members.Select(m => new FormedItem(m.Item, m.Choice.Stack))], because)
        { Beside = [.. others] };
    }
}
