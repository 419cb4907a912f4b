using Laydown.Measures;
using Laydown.Optics.Looks;

namespace Laydown.Optics.Fits;

/// <summary>The optics of an ink set as its readings tell them.</summary>
/// <param name="Sheet">The bare sheet, from its own readings where it is clear and was read through.</param>
/// <param name="Inks">Inks, white first.</param>
/// <param name="Residuals">Every reading that was fitted, in the order of the table.</param>
/// <param name="Findings">What is doubtful about readings or fit.</param>
public sealed record FittedOptics(
    LookSheet Sheet, IReadOnlyList<FittedInk> Inks, IReadOnlyList<ReadingResidual> Residuals, IReadOnlyList<Finding> Findings)
{
    /// <summary>The ink of that name, or null.</summary>
    public FittedInk? Find(string ink) => Inks.FirstOrDefault(i => i.Ink == ink);
}
