namespace Laydown.Output.PressFiles;

/// <summary>A picture that pieces of a sheet show: of one item, for pieces that lie upright or on their side.</summary>
/// <remarks>Upright and turned differ only where a press has other dots across than along: a turned picture's width lies along the feed.</remarks>
/// <param name="ItemId">The item.</param>
/// <param name="Turned">Whether it lies on its side.</param>
/// <param name="Columns">Columns of the whole upright picture at the resolution of the press.</param>
/// <param name="Rows">Rows of it.</param>
/// <param name="BackUp">Whether the pieces lie with their backs toward the face printed first.</param>
internal sealed record PlacedPicture(string ItemId, bool Turned, int Columns, int Rows, bool BackUp = false);
