using Laydown.Colour.Gamuts;
using Laydown.Colour.Inks;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Colour.Inversion;

/// <summary>Makes the tables of an output profile from a model of a print.</summary>
public static class ProfileTableMaker
{
    /// <summary>Fills all tables for four inks, black last.</summary>
    /// <inheritdoc cref="Make(IInkModel, InkLimits, BlackPolicy, InkWishes, int, int, IProgress{double}, CancellationToken)"/>
    public static ProfileTables Make(
        IInkModel model, InkLimits limits, BlackPolicy policy, int forwardSteps, int inverseSteps, CancellationToken cancellation) =>
        Make(model, limits, policy, InkWishes.FourInks, forwardSteps, inverseSteps, null, cancellation);

    /// <summary>Fills all tables.</summary>
    /// <param name="model">Model of the print under D50, 3 to 8 inks.</param>
    /// <param name="limits">Ink limits; every node of the inverse tables keeps them.</param>
    /// <param name="policy">Wish for black.</param>
    /// <param name="wishes">What decides between equal colours.</param>
    /// <param name="forwardSteps">Nodes along each ink, 2 to 33.</param>
    /// <param name="inverseSteps">Nodes along L*, a*, b*: odd, 9 to 65, so that the neutral axis lies on nodes.</param>
    /// <param name="progress">Told the share done, 0 to 1; may be null.</param>
    /// <param name="cancellation">Stops the work between rows of nodes.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number of nodes lies outside its range.</exception>
    public static ProfileTables Make(
        IInkModel model, InkLimits limits, BlackPolicy policy, InkWishes wishes, int forwardSteps, int inverseSteps,
        IProgress<double>? progress, CancellationToken cancellation)
    {
        Bounds.Within(forwardSteps, 2, 33);
        InkInverse inverse = InverseFor(model, limits, policy, wishes);
        Gamut gamut = Gamut.Of(model, limits.PerInk, limits.Total);
        InverseAxes axes = InverseAxes.For(gamut, inverseSteps);
        PerceptualFit fit = new(Gamut.OfSrgb(), gamut, DarkestNeutral(inverse).L);

        Lab[] forward = Forward(model, forwardSteps, cancellation);
        progress?.Report(0.1);
        InverseTable colorimetric = InverseTable.Fill(inverse, axes, static colour => colour, null, cancellation);
        progress?.Report(0.5);
        TableFit.Apply(colorimetric, inverse, axes, cancellation);
        progress?.Report(0.7);
        InverseTable perceptual = InverseTable.Fill(inverse, axes, fit.Map, colorimetric, cancellation);
        progress?.Report(1);
        return new(model.White, model.Inks, forwardSteps, forward, axes, colorimetric.Inks, perceptual.Inks, colorimetric.Distance);
    }

    /// <summary>The inverse that tables are made with: its black is full where the print is darkest, and no ink turns back on the way.</summary>
    public static InkInverse InverseFor(IInkModel model, InkLimits limits, BlackPolicy policy, InkWishes wishes)
    {
        double darkest = DarkestNeutral(new(model, limits, policy, wishes)).L;
        return new(model, limits, NeutralRamp.Steady(model, limits, policy.EndingAt(darkest), wishes), wishes);
    }

    /// <summary>The darkest neutral that the limits allow, media-relative.</summary>
    public static Lab DarkestNeutral(InkInverse inverse)
    {
        double[] inks = [.. Enumerable.Range(0, inverse.Inks).Select(i => i == inverse.Wishes.Black ? 1 : 0.5)];
        inverse.Solve(default, inks, [.. inverse.EverywhereStarts]);
        return inverse.Predict(inks);
    }

    private static Lab[] Forward(IInkModel model, int steps, CancellationToken cancellation)
    {
        int count = checked((int)Math.Pow(steps, model.Inks)), slice = count / steps;
        Lab[] table = new Lab[count];
        Parallel.For(0, steps, new ParallelOptions { CancellationToken = cancellation }, first =>
        {
            double[] inks = new double[model.Inks];
            for (int node = first * slice; node < (first + 1) * slice; node++)
            {
                for (int ink = model.Inks - 1, rest = node; ink >= 0; ink--, rest /= steps)
                    inks[ink] = (rest % steps) / (double)(steps - 1);
                table[node] = Lab.From(model.ToXyz(inks), model.White);
            }
        });
        return table;
    }
}
