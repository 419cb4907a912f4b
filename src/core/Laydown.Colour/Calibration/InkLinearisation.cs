namespace Laydown.Colour.Calibration;

/// <summary>Linearisation of one ink.</summary>
/// <param name="Ink">Name of the ink.</param>
/// <param name="Aim">What its steps are even in.</param>
/// <param name="LimitPercent">Ink at full tone, percent of one full ink.</param>
/// <param name="Curve">Laydown wanted → laydown sent, percent of the limit, at even steps from 0 to 100, strictly ascending.</param>
/// <param name="LargestPoolPercent">Largest change that a step's tone took to make the wedge rise, percent: the noise of the wedge.</param>
/// <param name="Roughness">Largest second difference of the curve, percent.</param>
public sealed record InkLinearisation(
    string Ink, LinearisationAim Aim, double LimitPercent, IReadOnlyList<double> Curve, double LargestPoolPercent, double Roughness);
