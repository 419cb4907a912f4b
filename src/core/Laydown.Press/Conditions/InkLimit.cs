using Laydown.Press.Inks;

namespace Laydown.Press.Conditions;

/// <summary>Calibration of one ink in a print condition.</summary>
/// <param name="Role">The ink.</param>
/// <param name="LimitPercent">Most of the full laydown used, percent.</param>
/// <param name="Curve">Laydown wanted → laydown sent, both percent, ascending from 0 to 100 at even steps; at least two values.</param>
public sealed record InkLimit(InkRole Role, double LimitPercent, IReadOnlyList<double> Curve);
