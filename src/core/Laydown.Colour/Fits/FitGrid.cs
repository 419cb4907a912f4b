namespace Laydown.Colour.Fits;

/// <summary>A model of a print as numbers: roots of X, Y, Z on a grid over effective coverages.</summary>
/// <remarks>
/// Between nodes the roots are linear in each coverage: within a cell this is Neugebauer's mixture with the Yule–Nielsen factor, over the
/// whole grid the cellular model [Rossier2010]. Two nodes an ink make the plain model.
/// </remarks>
/// <param name="InkNames">Names of the inks in order.</param>
/// <param name="YuleNielsen">n of the roots, 1 to 100.</param>
/// <param name="Curves">For each ink the effective coverage at even steps, rising from 0 to 1.</param>
/// <param name="Nodes">For each ink the coverages of its nodes, rising from 0 to 1; at least two.</param>
/// <param name="Roots">Three roots for each node, of ratios to D50; first ink slowest.</param>
public sealed record FitGrid(
    IReadOnlyList<string> InkNames,
    double YuleNielsen,
    IReadOnlyList<IReadOnlyList<double>> Curves,
    IReadOnlyList<IReadOnlyList<double>> Nodes,
    float[] Roots);
