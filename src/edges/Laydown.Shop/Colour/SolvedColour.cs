using Laydown.Press.Conditions;

namespace Laydown.Shop.Colour;

/// <summary>A named colour on a print condition.</summary>
/// <param name="Colour">The colour of the library.</param>
/// <param name="InkNames">Inks in order.</param>
/// <param name="Found">Inks, prediction, ΔE00, whether it can be printed.</param>
public sealed record SolvedColour(LibraryColour Colour, IReadOnlyList<string> InkNames, SeparatedColour Found)
{
    /// <summary>Sum of inks, parts of one full ink.</summary>
    public double InkSum => Found.Inks.Sum();
}
