using Laydown.Plan.Costs;
using Laydown.Plan.Log;

namespace Laydown.Shop.Log;

/// <summary>Learns from the log how far estimates of time are off.</summary>
/// <param name="log">The log.</param>
public sealed class LearnEstimates(ILogStore log)
{
    /// <summary>Most runs that are learnt from: the last ones.</summary>
    public const int MostRuns = 4000;

    /// <summary>What the last runs teach about minutes at the press.</summary>
    public async Task<EstimateModel> MinutesAsync(CancellationToken cancellation) => Minutes(await log.ActualsAsync(new(), MostRuns, cancellation));

    /// <summary>What times of plans, quotes, modes taken and layouts made by hand are corrected by; null where the shop leaves them as reckoned.</summary>
    public async Task<EstimateModel?> ForPlansAsync(ShopRates rates, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(rates);
        return rates.Policy is { UseLearntTimes: true } ? await MinutesAsync(cancellation) : null;
    }

    /// <summary>What the last runs teach about ink, ml; runs whose ink was not read are left out.</summary>
    public async Task<EstimateModel> InkAsync(CancellationToken cancellation) => Ink(await log.ActualsAsync(new(), MostRuns, cancellation));

    /// <summary>Both, from one look at the log.</summary>
    public async Task<(EstimateModel Minutes, EstimateModel Ink)> BothAsync(CancellationToken cancellation)
    {
        IReadOnlyList<RunActual> actuals = await log.ActualsAsync(new(), MostRuns, cancellation);
        return (Minutes(actuals), Ink(actuals));
    }

    /// <summary>A run's time as reckoned without the log, and what the log says of it.</summary>
    public async Task<LearntTime> OfRunAsync(Laydown.Plan.Runs.Run run, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(run);
        return LearntTime.Of(run, await MinutesAsync(cancellation));
    }

    private static EstimateModel Minutes(IReadOnlyList<RunActual> actuals) => EstimateModel.Learn(
        actuals.Where(a => a.EstimatedMinutes > 0 && a.Minutes > 0).Select(a => new EstimateCase(a.PressId, a.ModeId, a.StockId, a.EstimatedMinutes, a.Minutes)));

    private static EstimateModel Ink(IReadOnlyList<RunActual> actuals) => EstimateModel.Learn(
        actuals.Where(a => a.EstimatedInkMl > 0 && a.InkMl > 0).Select(a => new EstimateCase(a.PressId, a.ModeId, a.StockId, a.EstimatedInkMl, a.InkMl!.Value)));
}
