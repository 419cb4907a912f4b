using Laydown.Formats.Json;
using Laydown.Measures;
using Laydown.Plan.Costs;
using Laydown.Shop.Run;

namespace Laydown.Intake.Run;

/// <inheritdoc/>
public sealed class QuoteFiles : IQuoteFiles
{
    /// <inheritdoc/>
    public Reading<QuoteJob> Quote(string path) => LaydownJson.ReadFile<QuoteJob>(path).Then(job =>
    {
        string file = Path.GetFileName(path);
        List<InputFault> faults =
        [
            .. job.Items.Index().Where(i => job.Items.Take(i.Index).Any(earlier => string.Equals(earlier.Id, i.Item.Id, StringComparison.Ordinal)))
                .Select(i => new InputFault(file, null, Invariant($"/items/{i.Index}/id"), i.Item.Id, "each id once")),
            .. job.Items.Index().SelectMany(i => (i.Item.Finishing ?? []).Index().Where(f => job.Rates.FinishingRates.All(r => r.Kind != f.Item.Kind))
                .Select(f => new InputFault(file, null, Invariant($"/items/{i.Index}/finishing/{f.Index}/kind"), Invariant($"{f.Item.Kind}, which has no rate"), "a kind of /rates/finishingRates"))),
            .. RatesFaults.Of(file, job.Rates),
        ];
        return faults.Count > 0 ? Reading.Refused<QuoteJob>(faults) : Reading.Of(job);
    });
}
