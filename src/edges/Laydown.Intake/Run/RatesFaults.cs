using Laydown.Measures;
using Laydown.Plan.Costs;

namespace Laydown.Intake.Run;

/// <summary>What contradicts itself in rates.</summary>
internal static class RatesFaults
{
    /// <summary>Kinds of finishing and of overhead that are told twice.</summary>
    public static IEnumerable<InputFault> Of(string file, ShopRates rates) =>
    [
        .. rates.FinishingRates.Index().Where(r => rates.FinishingRates.Take(r.Index).Any(earlier => earlier.Kind == r.Item.Kind))
            .Select(r => new InputFault(file, null, Invariant($"/rates/finishingRates/{r.Index}/kind"), r.Item.Kind.ToString(), "each kind once")),
        .. (rates.Overheads ?? []).Index().Where(o => rates.Overheads!.Take(o.Index).Any(earlier => string.Equals(earlier.Name, o.Item.Name, StringComparison.Ordinal)))
            .Select(o => new InputFault(file, null, Invariant($"/rates/overheads/{o.Index}/name"), o.Item.Name, "each name once")),
    ];
}
