using Laydown.Colour.Inks;
using Laydown.Colour.Inversion;
using Laydown.Colour.Spaces;

namespace Laydown.Colour.Named;

/// <summary>Solves single colours through a model: the inks that meet them with the least ink, or the nearest that can be printed.</summary>
/// <remarks>
/// Named colours are wanted as they are, not as they would look on the stock's white: against the perfect diffuser. Every start of the ink
/// space is tried with little, some and much black; among answers equal to the eye (0.05 ΔE00) the one with least ink is kept.
/// </remarks>
public sealed class NamedColourSolver
{
    /// <summary>ΔE00 under which a colour counts as met.</summary>
    public const double Met = 0.5;

    private const double EqualToTheEye = 0.05;
    private const int PolishSteps = 60;
    private static readonly double[] Blacks = [0, 0.2, 0.5, 0.9];
    private readonly IInkModel model;
    private readonly InkInverse inverse;

    /// <summary>A solver for a print.</summary>
    /// <param name="model">Model of the print.</param>
    /// <param name="limits">Ink limits.</param>
    /// <param name="wishes">What decides between equal colours.</param>
    public NamedColourSolver(IInkModel model, InkLimits limits, InkWishes wishes) =>
        (this.model, inverse) = (model, new(model, limits, BlackPolicy.Usual, wishes));

    /// <summary>Solves one colour.</summary>
    /// <param name="wanted">Colour wanted, against the perfect diffuser under D50.</param>
    public NamedSolution Solve(Lab wanted)
    {
        Lab relative = Lab.From(wanted.ToXyz(WhitePoints.Pcs), model.White);
        NamedSolution? best = null;
        double[] starts = [.. inverse.EverywhereStarts];
        foreach (double black in Blacks)
        {
            for (int start = 0; start < starts.Length; start += model.Inks)
            {
                double[] inks = [.. starts.AsSpan(start, model.Inks)];
                inverse.SolveKeeping(relative, black, inks);
                NamedSolution found = Tell(wanted, inks);
                if (best is null || Better(found, best))
                    best = found;
            }
        }

        return best!.Reachable ? best : Polish(wanted, best);
    }

    private static bool Better(NamedSolution one, NamedSolution other) =>
        Math.Abs(one.DeltaE00 - other.DeltaE00) > EqualToTheEye ? one.DeltaE00 < other.DeltaE00 : one.InkSum < other.InkSum - 1e-4;

    // Outside the gamut the search's metric is only like ΔE00; small steps of one ink, then of two against each other, find ΔE00's nearest.
    private NamedSolution Polish(Lab wanted, NamedSolution start)
    {
        NamedSolution best = start;
        double stride = 0.05;
        for (int step = 0; step < PolishSteps && stride > 1e-4; step++)
        {
            NamedSolution before = best;
            for (int one = 0; one < model.Inks; one++)
            {
                for (int other = one; other < model.Inks; other++)
                {
                    foreach (double sign in new[] { stride, -stride })
                    {
                        double[] inks = [.. best.Inks];
                        inks[one] += sign;
                        inks[other] -= other == one ? 0 : sign;
                        inverse.Limits.Project(inks);
                        NamedSolution found = Tell(wanted, inks);
                        best = found.DeltaE00 < best.DeltaE00 - 1e-6 ? found : best;
                    }
                }
            }

            if (ReferenceEquals(before, best))
                stride /= 2;
        }

        return best;
    }

    private NamedSolution Tell(Lab wanted, double[] inks)
    {
        for (int ink = 0; ink < inks.Length; ink++)
            inks[ink] = inks[ink] < 5e-5 ? 0 : inks[ink];
        Lab predicted = Lab.From(model.ToXyz(inks), WhitePoints.Pcs);
        double difference = Ciede2000.Between(wanted, predicted);
        return new(inks, wanted, predicted, difference, difference <= Met, inks.Sum());
    }
}
