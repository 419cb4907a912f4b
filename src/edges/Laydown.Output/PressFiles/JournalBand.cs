using Laydown.Formats.TiffWriting;
using Laydown.Raster.Sheets;

namespace Laydown.Output.PressFiles;

/// <summary>What is known of a finished band: how each ink's strip is known on file, and the dots counted in it.</summary>
/// <param name="Number">Band from 0.</param>
/// <param name="Stamps">One for each ink.</param>
/// <param name="Totals">Dots by ink and level, over the band and for each piece.</param>
internal sealed record JournalBand(int Number, IReadOnlyList<StripStamp> Stamps, DotTotals Totals);
