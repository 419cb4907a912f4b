using Laydown.Colour.Inks;
using Laydown.Colour.Spaces;

namespace Laydown.Colour.Inversion;

/// <summary>Finds the inks for a colour: a model run backwards under ink limits and a wish for black.</summary>
/// <remarks>
/// Makes least |W (Lab(inks) − wanted)|² + p (K − K wanted)² inside the limits by a projected Levenberg–Marquardt search; W holds S_L,
/// S_C and S_H of
/// CIEDE2000 frozen at the wanted colour, so outside the gamut the nearest printable colour comes out. The price p is small: a
/// reachable colour is met
/// to about 0.05. Four inks, black last. The colours are media-relative: the bare stock is Lab 100, 0, 0.
/// </remarks>
public sealed class InkInverse
{
    /// <summary>Number of inks: cyan, magenta, yellow, black.</summary>
    public const int Inks = 4;

    private const int Black = 3;
    private const int MostSteps = 40;
    private const double BlackPrice = 0.2;
    private readonly NeugebauerModel model;
    private readonly InkLimits limits;
    private readonly BlackPolicy policy;

    /// <summary>An inverse of a four-ink model.</summary>
    /// <exception cref="ArgumentException">The model or the limits are not for four inks.</exception>
    public InkInverse(NeugebauerModel model, InkLimits limits, BlackPolicy policy)
    {
        if (model.Inks != Inks || limits.PerInk.Count != Inks)
            throw new ArgumentException(Invariant($"{model.Inks} inks in the model, {limits.PerInk.Count} limits: wanted four."), nameof(model));

        (this.model, this.limits, this.policy) = (model, limits, policy);
    }

    /// <summary>The limits it keeps.</summary>
    public InkLimits Limits => limits;

    /// <summary>Media-relative colour of a mixture.</summary>
    public Lab Predict(ReadOnlySpan<double> coverages) => Lab.From(model.ToXyz(coverages), model.White);

    /// <summary>Searches from one start.</summary>
    /// <param name="wanted">Media-relative colour.</param>
    /// <param name="coverages">Start of the search; receives the inks, inside the limits.</param>
    public Separated Solve(Lab wanted, Span<double> coverages)
    {
        limits.Project(coverages);
        LocalMetric metric = new(wanted);
        double blackWanted = Math.Min(policy.Wanted(wanted), limits.PerInk[Black]);
        Span<double> residual = stackalloc double[Inks], trialResidual = stackalloc double[Inks], trial = stackalloc double[Inks];
        Span<double> slopes = stackalloc double[Inks * Inks], trialSlopes = stackalloc double[Inks * Inks];
        double cost = Residuals(coverages, metric, blackWanted, residual, slopes);
        double damping = 1e-2;
        for (int step = 0; step < MostSteps && cost > 1e-7; step++)
        {
            coverages.CopyTo(trial);
            double moved = BoundedStep.Take(trial, residual, slopes, damping, limits);
            double trialCost = Residuals(trial, metric, blackWanted, trialResidual, trialSlopes);
            bool better = trialCost < cost;
            bool settled = moved < 1e-6 || (better && cost - trialCost < 1e-9 + (1e-5 * cost));
            if (better)
            {
                (cost, damping) = (trialCost, damping * 0.2);
                trial.CopyTo(coverages);
                trialResidual.CopyTo(residual);
                trialSlopes.CopyTo(slopes);
            }
            else
            {
                damping = Math.Max(damping, 1e-4) * 8;
            }

            if (settled)
                break;
        }

        double distance = Math.Sqrt(Math.Max(0, cost - (residual[Black] * residual[Black])));
        return new(distance, cost);
    }

    /// <summary>Searches from several starts and keeps the best.</summary>
    /// <param name="wanted">Media-relative colour.</param>
    /// <param name="coverages">First start; receives the best inks found.</param>
    /// <param name="starts">Further starts, four coverages each, one after the other; tried only while the colour is not met.</param>
    public Separated Solve(Lab wanted, Span<double> coverages, ReadOnlySpan<double> starts)
    {
        Separated best = Solve(wanted, coverages);
        Span<double> other = stackalloc double[Inks];
        for (int start = 0; start < starts.Length && best.Distance > 0.1; start += Inks)
        {
            starts.Slice(start, Inks).CopyTo(other);
            if (Near(other, coverages))
                continue;

            Separated found = Solve(wanted, other);
            if (found.Cost < best.Cost - 1e-9)
            {
                best = found;
                other.CopyTo(coverages);
            }
        }

        return best;
    }

    // A start beside the best point found would only lead back to it.
    private static bool Near(ReadOnlySpan<double> one, ReadOnlySpan<double> other)
    {
        double apart = 0;
        for (int ink = 0; ink < Inks; ink++)
            apart = Math.Max(apart, Math.Abs(one[ink] - other[ink]));
        return apart < 0.03;
    }

    private double Residuals(ReadOnlySpan<double> coverages, LocalMetric metric, double blackWanted, Span<double> residual, Span<double> slopes)
    {
        Span<Xyz> change = stackalloc Xyz[Inks];
        Xyz colour = model.ToXyz(coverages, change);
        metric.Weigh(Lab.From(colour, model.White), residual);
        Xyz steep = Lab.Steepness(colour, model.White);
        for (int ink = 0; ink < Inks; ink++)
        {
            double x = steep.X * change[ink].X, y = steep.Y * change[ink].Y, z = steep.Z * change[ink].Z;
            metric.WeighStep(116 * y, 500 * (x - y), 200 * (y - z), slopes.Slice(ink * Inks, Inks));
            slopes[(ink * Inks) + Black] = ink == Black ? BlackPrice : 0;
        }

        residual[Black] = BlackPrice * (coverages[Black] - blackWanted);
        double cost = 0;
        foreach (double part in residual)
            cost += part * part;
        return cost;
    }
}
