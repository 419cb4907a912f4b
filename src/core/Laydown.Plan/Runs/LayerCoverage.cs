using Laydown.Press.Inks;

namespace Laydown.Plan.Runs;

/// <summary>Measured ink of one role in one layer of one piece.</summary>
/// <param name="Layer">Layer from 0 in the stack.</param>
/// <param name="Role">The ink.</param>
/// <param name="MeanCoverage">Mean laydown over the printed area, 1 = full laydown of one ink everywhere; 0 to 10.</param>
/// <param name="MaxTotal">Highest sum of inks of that layer at one pixel, 1 = one full ink; 0 to 20.</param>
public sealed record LayerCoverage(int Layer, InkRole Role, double MeanCoverage, double MaxTotal);
