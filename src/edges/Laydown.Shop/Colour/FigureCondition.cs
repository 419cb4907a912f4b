using Laydown.Colour.Gamuts;
using Laydown.Colour.Inversion;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Shop.Colour;

/// <summary>Computes what a fitted print condition can do: gamut and neutral ramp under its limits.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="files">Reads.</param>
public sealed class FigureCondition(ShopFolder folder, IColourFiles files)
{
    private const int Corners = 72;
    private const double StepL = 2.5;

    /// <summary>The figures, or why there are none.</summary>
    /// <param name="conditionId">A fitted print condition.</param>
    /// <param name="wish">Limits and black; limits left out are those of the condition.</param>
    /// <param name="cancellation">Stops between colours.</param>
    public Reading<ConditionFigures> Figure(string conditionId, SeparationWish wish, CancellationToken cancellation) =>
        new ConditionShelf(folder, files).Fitted(conditionId).Then(found =>
            SeparationWish.OfCondition(wish, found.Condition, found.Print).Limits(found.Print.InkNames)
                .Then(limits => Reading.Of(Figure(found.Print, limits, wish.Policy(), cancellation))));

    private static ConditionFigures Figure(PrintModel print, InkLimits limits, BlackPolicy policy, CancellationToken cancellation)
    {
        Gamut gamut = Gamut.Of(print.Model, limits.PerInk, limits.Total), srgb = Gamut.OfSrgb();
        InkInverse inverse = ProfileTableMaker.InverseFor(print.Model, limits, policy, InkWishes.For(print.InkNames));
        double darkest = ProfileTableMaker.DarkestNeutral(inverse).L;
        List<SeparatedColour> neutrals = [];
        double[] inks = new double[print.InkNames.Count];
        for (double l = 100; l > darkest; l -= StepL)
        {
            // Each neutral starts from the one before, as pictures do.
            cancellation.ThrowIfCancellationRequested();
            Lab wanted = new(l, 0, 0);
            inverse.Solve(wanted, inks, [.. inverse.EverywhereStarts]);
            Lab predicted = inverse.Predict(inks);
            double apart = Ciede2000.Between(wanted, predicted);
            neutrals.Add(new("", wanted, [.. inks], predicted, apart, apart <= 0.5));
        }

        return new(print.InkNames, gamut.Volume, srgb.Volume, Slices(gamut), Slices(srgb), neutrals);
    }

    private static IReadOnlyList<IReadOnlyList<Lab>> Slices(Gamut gamut) =>
        [.. Enumerable.Range(1, 9).Select(i => gamut.SliceAtLightness(10 * i, Corners))];
}
