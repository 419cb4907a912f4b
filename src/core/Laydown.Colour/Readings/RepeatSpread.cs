namespace Laydown.Colour.Readings;

/// <summary>How far the readings of one patch lie apart.</summary>
/// <param name="Id">The patch.</param>
/// <param name="FromMean">ΔE00 of each reading to the mean, in the order of the file; outliers too, though they are not in the mean.</param>
/// <param name="Outliers">Places of the outliers in <paramref name="FromMean"/>, from 0.</param>
public sealed record RepeatSpread(string Id, IReadOnlyList<double> FromMean, IReadOnlyList<int> Outliers);
