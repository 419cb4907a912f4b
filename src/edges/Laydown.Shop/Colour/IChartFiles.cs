using Laydown.Colour.Charts;
using Laydown.Measures;

namespace Laydown.Shop.Colour;

/// <summary>Writes the folder of a chart: separations, PDF and reference file, whole or not at all.</summary>
public interface IChartFiles
{
    /// <summary>Writes; an earlier folder of the same name gives way when the new one is whole.</summary>
    /// <param name="chart">The chart.</param>
    /// <param name="sheets">Its sheets.</param>
    /// <param name="chartsFolder">Folder that holds the folders of charts.</param>
    /// <param name="id">Name of the new folder; a plain name.</param>
    /// <param name="instant">Instant written into the files.</param>
    /// <param name="cancellation">Stops the writing; nothing stays then.</param>
    /// <returns>Full paths of the files, or a fault of disk or size.</returns>
    Reading<IReadOnlyList<string>> Write(
        Chart chart, IReadOnlyList<ChartSheet> sheets, string chartsFolder, string id, DateTimeOffset instant, CancellationToken cancellation);
}
