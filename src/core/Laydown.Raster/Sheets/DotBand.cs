using Laydown.Raster.Screens;

namespace Laydown.Raster.Sheets;

/// <summary>Some rows of a sheet as dots, over its whole width.</summary>
/// <param name="Number">Band from 0.</param>
/// <param name="FirstRow">First row on the sheet.</param>
/// <param name="Rows">How many rows; the rows of <paramref name="Dots"/> beyond are left over.</param>
/// <param name="Dots">All inks.</param>
/// <param name="Totals">Dots counted in the band.</param>
public sealed record DotBand(int Number, int FirstRow, int Rows, DotRows Dots, DotTotals Totals);
