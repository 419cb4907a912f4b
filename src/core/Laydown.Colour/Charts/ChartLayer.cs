namespace Laydown.Colour.Charts;

/// <summary>One layer of a chart that is printed in several.</summary>
/// <param name="Name">Name for people and files, such as <c>white</c>.</param>
/// <param name="Inks">Places of its inks among the chart's.</param>
public sealed record ChartLayer(string Name, IReadOnlyList<int> Inks)
{
    /// <summary>This layer of a chart as a chart of its own.</summary>
    public Chart Of(Chart chart) => chart with
    {
        InkNames = [.. Inks.Select(i => chart.InkNames[i])],
        Patches = [.. chart.Patches.Select(Of)],
        Layers = [],
    };

    /// <summary>This layer of a sheet; marks and words stay where <paramref name="marked"/> says so.</summary>
    public ChartSheet Of(ChartSheet sheet, bool marked) => sheet with
    {
        Patches = [.. sheet.Patches.Select(p => p with { Patch = Of(p.Patch) })],
        Marks = marked ? sheet.Marks : [],
        Labels = marked ? sheet.Labels : [],
    };

    private ChartPatch Of(ChartPatch patch) => patch with { Inks = [.. Inks.Select(i => patch.Inks[i])] };
}
