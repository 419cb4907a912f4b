using Laydown.Colour.Inversion;
using Laydown.Colour.Named;
using Laydown.Measures;
using Laydown.Press.Conditions;

namespace Laydown.Shop.Colour;

/// <summary>Inks for the shop's named colours on a fitted print condition.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="files">Reads.</param>
public sealed class SolveNamedColours(ShopFolder folder, IColourFiles files)
{
    /// <summary>All colours of the library, in its order; a colour out of reach gets the nearest that can be printed.</summary>
    /// <param name="conditionId">The print condition; it must have been fitted.</param>
    /// <param name="wish">Limits; those left out are the condition's. Black is what needs least ink.</param>
    /// <param name="cancellation">Stops between colours.</param>
    public Reading<IReadOnlyList<SolvedColour>> Solve(string conditionId, SeparationWish wish, CancellationToken cancellation)
    {
        return new ConditionShelf(folder, files).Fitted(conditionId).Then(found =>
            SeparationWish.OfCondition(wish, found.Condition, found.Print).Limits(found.Print.InkNames).Then(limits =>
                files.Library(folder.NamedColours).Then(library => Reading.Of(Solve(found.Print, limits, library, cancellation)))));
    }

    private static IReadOnlyList<SolvedColour> Solve(
        PrintModel print, InkLimits limits, ColourLibrary library, CancellationToken cancellation)
    {
        NamedColourSolver solver = new(print.Model, limits, InkWishes.For(print.InkNames));
        List<SolvedColour> all = [];
        foreach (LibraryColour colour in library.Colours)
        {
            cancellation.ThrowIfCancellationRequested();
            NamedSolution found = solver.Solve(colour.Colour.ToLab());
            all.Add(new(colour, print.InkNames, new(colour.Name, found.Wanted, found.Inks, found.Predicted, found.DeltaE00, found.Reachable)));
        }

        return all;
    }
}
