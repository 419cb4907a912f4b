namespace Laydown.Bench;

/// <summary>A pair that was refused; the others are solved all the same.</summary>
/// <param name="Pair">Its name.</param>
/// <param name="Faults">Why, each with file, page, field, found and wanted.</param>
internal sealed record PanelRefusal(string Pair, IReadOnlyList<string> Faults);
