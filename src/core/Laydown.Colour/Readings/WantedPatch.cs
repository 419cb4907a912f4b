namespace Laydown.Colour.Readings;

/// <summary>A patch as its chart asks for it.</summary>
/// <param name="Id">Name of the patch on the chart.</param>
/// <param name="Inks">Ink asked for, parts of one full ink, 0 to 1, in the order of the inks of the readings.</param>
public sealed record WantedPatch(string Id, IReadOnlyList<double> Inks);
