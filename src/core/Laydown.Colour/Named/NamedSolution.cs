using Laydown.Colour.Spaces;

namespace Laydown.Colour.Named;

/// <summary>A named colour as a print will show it.</summary>
/// <param name="Inks">Inks, 0 to 1, inside the limits.</param>
/// <param name="Wanted">Colour wanted, against the perfect diffuser under D50.</param>
/// <param name="Predicted">Colour predicted, likewise.</param>
/// <param name="DeltaE00">What is left.</param>
/// <param name="Reachable">Whether it is met within <see cref="NamedColourSolver.Met"/>.</param>
/// <param name="InkSum">Sum of the inks, parts of one full ink.</param>
public sealed record NamedSolution(IReadOnlyList<double> Inks, Lab Wanted, Lab Predicted, double DeltaE00, bool Reachable, double InkSum);
