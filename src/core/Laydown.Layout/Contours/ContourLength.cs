namespace Laydown.Layout.Contours;

/// <summary>One length of roll with contours on it, laid out as a strip: x runs along the roll and starts an edge margin before the first piece.</summary>
/// <param name="Spots">What lies on it; copies are numbered over all rolls.</param>
/// <param name="CutsMm">Where it is cut across from edge to edge between two sections, mm along the roll, ascending.</param>
/// <param name="LengthMm">Used length with an edge margin at both ends, mm; 0 where nothing lies on it.</param>
public sealed record ContourLength(IReadOnlyList<ContourSpot> Spots, IReadOnlyList<double> CutsMm, double LengthMm);
