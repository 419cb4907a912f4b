namespace Laydown.Optics.Fits;

/// <summary>Readings of a chart of ink optics, and the backings they were read over.</summary>
/// <param name="Readings">All readings; at least one.</param>
/// <param name="Backings">The backings.</param>
/// <param name="Notes">What had to be decided in taking the readings, each in a sentence.</param>
public sealed record OpticsTable(IReadOnlyList<OpticsReading> Readings, Backings Backings, IReadOnlyList<string> Notes);
