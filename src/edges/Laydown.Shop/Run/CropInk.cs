namespace Laydown.Shop.Run;

/// <summary>One ink over a part of a made sheet.</summary>
/// <param name="Layer">Its layer, from 1.</param>
/// <param name="Ink">Its name.</param>
/// <param name="Percent">Mean coverage, percent of full laydown.</param>
/// <param name="MlPerM2">Ink there, ml/m².</param>
/// <param name="Values">How often each value occurs, from the lowest: value and count; codes of drops for dots, of 255 for contone.</param>
public sealed record CropInk(int Layer, string Ink, double Percent, double MlPerM2, IReadOnlyList<ValueCount> Values);
