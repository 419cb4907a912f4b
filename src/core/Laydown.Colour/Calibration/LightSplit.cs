using Laydown.Measures;

namespace Laydown.Colour.Calibration;

/// <summary>A designed share of one hue's demand between its light and its dark ink.</summary>
/// <param name="Strength">Colourant of the light ink as a share of the dark ink's, 0.05 to 0.95.</param>
/// <param name="StrengthResidual">Root mean square ΔE00 between steps of the light ink and the dark ink that stands for them; 0 where
/// the strength was given.</param>
/// <param name="TakeOverPercent">Demand at which the dark ink starts, percent.</param>
/// <param name="LightLimitPercent">Most of the light ink in use, percent: the limit, down to a whole code of 8 bits.</param>
/// <param name="DarkPercent">Dark ink at even steps of the demand, percent, from 0 to 100, never falling.</param>
/// <param name="Graininess">Mean graininess of the split over the demand, ΔL*².</param>
/// <param name="StraightGraininess">The same for the dark ink alone.</param>
public sealed record LightSplit(
    double Strength, double StrengthResidual, double TakeOverPercent, double LightLimitPercent, IReadOnlyList<double> DarkPercent,
    Figure Graininess, Figure StraightGraininess);
