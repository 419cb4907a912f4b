using Laydown.Colour.Charts;
using Laydown.Measures;
using Laydown.Shop.Colour;

namespace Laydown.Output.Charts;

/// <summary>Charts as folders of files.</summary>
/// <param name="scratchFolder">Scratch on the file system of the shop.</param>
public sealed class ChartFiles(string scratchFolder) : IChartFiles
{
    /// <inheritdoc/>
    public Reading<IReadOnlyList<string>> Write(
        Chart chart, IReadOnlyList<ChartSheet> sheets, string chartsFolder, string id, DateTimeOffset instant, CancellationToken cancellation) =>
        ChartFolder.Write(chart, sheets, chartsFolder, scratchFolder, id, instant, ChartFolder.UsualPpi, cancellation);
}
