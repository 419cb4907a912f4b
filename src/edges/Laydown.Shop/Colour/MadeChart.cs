namespace Laydown.Shop.Colour;

/// <summary>A chart that was made.</summary>
/// <param name="Id">Name of its folder.</param>
/// <param name="Inks">Inks.</param>
/// <param name="Patches">Number of patches.</param>
/// <param name="Sheets">Number of sheets.</param>
/// <param name="Stock">Name of the stock.</param>
/// <param name="Files">Names of its files.</param>
public sealed record MadeChart(string Id, IReadOnlyList<string> Inks, int Patches, int Sheets, string Stock, IReadOnlyList<string> Files);
