using Laydown.Colour.Inks;
using Laydown.Colour.Spaces;

namespace Laydown.Colour.Inversion;

/// <summary>Finds the inks for a colour: a model run backwards under ink limits, a wish for black and small prices on ink.</summary>
/// <remarks>
/// Makes least |W (Lab(inks) − wanted)|² + Σ pᵢ² (cᵢ − tᵢ)² inside the limits by a projected Levenberg–Marquardt search; W holds S_L, S_C
/// and S_H of CIEDE2000 frozen at the wanted colour, so outside the gamut the nearest printable colour comes out. The prices are small: a
/// reachable colour is met to about 0.05. The colours are media-relative: the bare stock is Lab 100, 0, 0.
/// </remarks>
public sealed class InkInverse
{
    private const int MostInks = 8;
    private const int MostSteps = 60;
    private const double Met = 0.1;

    private const double LastDamping = 1e-8;
    private const double FirstBlack = 0.025;
    private readonly IInkModel model;
    private readonly InkLimits limits;
    private readonly BlackPolicy policy;
    private readonly double[] farStarts;

    /// <summary>An inverse of a four-ink model, black last.</summary>
    /// <exception cref="ArgumentException">The model or the limits are not for four inks.</exception>
    public InkInverse(IInkModel model, InkLimits limits, BlackPolicy policy)
        : this(model, limits, policy, InkWishes.FourInks)
    {
    }

    /// <summary>An inverse of a model with up to eight inks.</summary>
    /// <exception cref="ArgumentException">Model, limits and wishes are for different numbers of inks.</exception>
    public InkInverse(IInkModel model, InkLimits limits, BlackPolicy policy, InkWishes wishes)
    {
        if (model.Inks > MostInks || model.Inks != limits.PerInk.Count || model.Inks != wishes.Price.Count)
        {
            throw new ArgumentException(
                Invariant($"{model.Inks} inks in the model, {limits.PerInk.Count} limits, {wishes.Price.Count} wishes: wanted the same, at most {MostInks}."),
                nameof(model));
        }

        (this.model, this.limits, this.policy, Wishes) = (model, limits, policy, wishes);
        farStarts = FarStarts();
    }

    /// <summary>Number of inks.</summary>
    public int Inks => model.Inks;

    /// <summary>The limits it keeps.</summary>
    public InkLimits Limits => limits;

    /// <summary>What decides between equal colours.</summary>
    public InkWishes Wishes { get; }

    /// <summary>Starts all over the ink space, one after the other: for colours that no neighbour leads to.</summary>
    public IReadOnlyList<double> EverywhereStarts => farStarts;

    /// <summary>Media-relative colour of a mixture.</summary>
    public Lab Predict(ReadOnlySpan<double> coverages) => Lab.From(model.ToXyz(coverages), model.White);

    /// <summary>Searches from one start.</summary>
    /// <param name="wanted">Media-relative colour.</param>
    /// <param name="coverages">Start of the search; receives the inks, inside the limits.</param>
    public Separated Solve(Lab wanted, Span<double> coverages) => SolveKeeping(wanted, policy.Wanted(wanted), coverages);

    /// <summary>Searches from one start with a given black in mind, as when a picture brings its own.</summary>
    /// <param name="wanted">Media-relative colour.</param>
    /// <param name="blackWanted">Black wished for, 0 to 1.</param>
    /// <param name="coverages">Start of the search; receives the inks, inside the limits.</param>
    public Separated SolveKeeping(Lab wanted, double blackWanted, Span<double> coverages)
    {
        limits.Project(coverages);
        int inks = model.Inks;
        LocalMetric metric = new(wanted);
        Span<double> target = stackalloc double[inks], trial = stackalloc double[inks];
        Span<double> gradient = stackalloc double[inks], normal = stackalloc double[inks * inks];
        Span<double> nextGradient = stackalloc double[inks], nextNormal = stackalloc double[inks * inks];
        Wishes.Targets(wanted.L, target);
        if (Wishes.Black is { } black)
            target[black] = BlackTarget(Math.Min(blackWanted, limits.PerInk[black]));

        double cost = Weigh(coverages, metric, target, gradient, normal, out double distance);
        double damping = 1e-2;
        for (int step = 0; step < MostSteps && cost > 1e-7; step++)
        {
            coverages.CopyTo(trial);
            double moved = BoundedStep.Take(trial, normal, gradient, damping, limits);
            double trialCost = Weigh(trial, metric, target, nextGradient, nextNormal, out double trialDistance);
            bool better = trialCost < cost;
            bool settled = moved < 1e-6 || (better && cost - trialCost < 1e-9 + (1e-6 * cost));
            if (better)
            {
                (cost, distance, damping) = (trialCost, trialDistance, damping * 0.2);
                trial.CopyTo(coverages);
                nextGradient.CopyTo(gradient);
                nextNormal.CopyTo(normal);
            }
            else
            {
                damping = Math.Max(damping, 1e-4) * 8;
            }

            // Prices are faint beside colour, so the last steps toward them need hardly any damping.
            if (settled && damping < LastDamping)
                break;
            damping = settled ? Math.Min(damping, 1e-4) * 0.01 : damping;
        }

        return new(distance, cost);
    }

    /// <summary>Searches from several starts and keeps the best.</summary>
    /// <param name="wanted">Media-relative colour.</param>
    /// <param name="coverages">First start; receives the best inks found.</param>
    /// <param name="starts">Further starts, one after the other; tried only while the colour is not met.</param>
    public Separated Solve(Lab wanted, Span<double> coverages, ReadOnlySpan<double> starts) =>
        SolveKeeping(wanted, policy.Wanted(wanted), coverages, starts);

    /// <summary>The same with a given black in mind.</summary>
    public Separated SolveKeeping(Lab wanted, double blackWanted, Span<double> coverages, ReadOnlySpan<double> starts)
    {
        int inks = model.Inks;
        Separated best = SolveKeeping(wanted, blackWanted, coverages);
        Span<double> other = stackalloc double[inks];
        for (int start = 0; start < starts.Length && best.Distance > Met; start += inks)
        {
            starts.Slice(start, inks).CopyTo(other);
            if (Near(other, coverages))
                continue;

            Separated found = SolveKeeping(wanted, blackWanted, other);
            if (found.Cost < best.Cost - 1e-9)
            {
                best = found;
                other.CopyTo(coverages);
            }
        }

        return best;
    }

    /// <summary>How far a mixture is from a colour, and how that changes with each ink: three weighted parts each.</summary>
    internal void Slopes(Lab wanted, ReadOnlySpan<double> coverages, Span<double> apart, Span<double> rows) =>
        Slopes(new LocalMetric(wanted), coverages, apart, rows);

    private void Slopes(LocalMetric metric, ReadOnlySpan<double> coverages, Span<double> apart, Span<double> rows)
    {
        Span<Xyz> change = stackalloc Xyz[coverages.Length];
        Xyz colour = model.ToXyz(coverages, change);
        metric.Weigh(Lab.From(colour, model.White), apart);
        Xyz steep = Lab.Steepness(colour, model.White);
        for (int ink = 0; ink < coverages.Length; ink++)
        {
            double x = steep.X * change[ink].X, y = steep.Y * change[ink].Y, z = steep.Z * change[ink].Z;
            metric.WeighStep(116 * y, 500 * (x - y), 200 * (y - z), rows.Slice(3 * ink, 3));
        }
    }

    // So much less black is aimed at in the lights that saving other ink alone does not bring any in; full black stays full.
    private static double BlackTarget(double wanted) => wanted - (FirstBlack * (1 - wanted));

    // A start beside the best point found would only lead back to it.
    private static bool Near(ReadOnlySpan<double> one, ReadOnlySpan<double> other)
    {
        double apart = 0;
        for (int ink = 0; ink < one.Length; ink++)
            apart = Math.Max(apart, Math.Abs(one[ink] - other[ink]));
        return apart < 0.03;
    }

    // Every colour ink alone and every two together, then two greys, with and without black.
    private double[] FarStarts()
    {
        int inks = model.Inks;
        int[] colours = [.. Enumerable.Range(0, inks).Where(i => i != Wishes.Black && Wishes.LightPairs.All(p => p.Light != i))];
        List<double> starts = [];
        foreach (int one in colours)
        {
            foreach (int other in colours.Where(o => o >= one))
                starts.AddRange(Enumerable.Range(0, inks).Select(i => i == one || i == other ? 0.8 : i == Wishes.Black ? 0 : 0.1));
        }

        starts.AddRange(Enumerable.Range(0, inks).Select(i => i == Wishes.Black ? 0.8 : 0.3));
        starts.AddRange(Enumerable.Range(0, inks).Select(i => i == Wishes.Black ? 0.1 : 0.3));
        return [.. starts];
    }

    // Cost, gradient and JᵀJ: three rows of colour, and a price on each ink.
    private double Weigh(
        ReadOnlySpan<double> coverages, LocalMetric metric, ReadOnlySpan<double> target, Span<double> gradient, Span<double> normal, out double distance)
    {
        int inks = coverages.Length;
        Span<double> apart = stackalloc double[3], rows = stackalloc double[3 * inks];
        Slopes(metric, coverages, apart, rows);
        double colourCost = (apart[0] * apart[0]) + (apart[1] * apart[1]) + (apart[2] * apart[2]), priceCost = 0;
        for (int i = 0; i < inks; i++)
        {
            ReadOnlySpan<double> row = rows.Slice(3 * i, 3);
            double price = Wishes.Price[i] * Wishes.Price[i], off = coverages[i] - target[i];

            // Only what ink adds counts, so that a wish under 0 does not look like a cost at 0.
            priceCost += price * ((off * off) - (target[i] < 0 ? target[i] * target[i] : 0));
            gradient[i] = (row[0] * apart[0]) + (row[1] * apart[1]) + (row[2] * apart[2]) + (price * off);
            for (int j = 0; j <= i; j++)
            {
                ReadOnlySpan<double> other = rows.Slice(3 * j, 3);
                double product = (row[0] * other[0]) + (row[1] * other[1]) + (row[2] * other[2]) + (i == j ? price : 0);
                normal[(i * inks) + j] = normal[(j * inks) + i] = product;
            }
        }

        distance = Math.Sqrt(colourCost);
        return colourCost + priceCost;
    }
}
