using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Week;

/// <summary>What of a planned run decides how long the press is set up for it.</summary>
public static class RunTraits
{
    /// <summary>The traits of a run.</summary>
    /// <param name="run">The run.</param>
    /// <param name="stock">Its stock.</param>
    public static WeekTraits Of(Runs.Run run, Stock stock) => new(
        stock.Id, stock.Kind == StockKind.Roll, stock.ThicknessMm, string.Join('+', run.Stack.Layers.Select(l => Invariant($"{l.Face}.{l.Group}"))),
        run.Stack.Layers.Any(l => l.Group == InkGroup.White), run.Mode.ModeId,
        Invariant($"{string.Join(' ', run.Belt.OpenZones)};{string.Join(' ', run.Belt.Lanes.Select(l => Invariant($"{l.StartMm:0.#}")))}"));
}
