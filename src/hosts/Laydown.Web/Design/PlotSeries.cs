namespace Laydown.Web.Design;

/// <summary>One series of a plot.</summary>
/// <param name="Name">Its name in key and table.</param>
/// <param name="Mark">How it is drawn.</param>
/// <param name="Look">Its line and mark.</param>
/// <param name="Points">Its points, in the order they are joined.</param>
public sealed record PlotSeries(string Name, PlotMark Mark, PlotLook Look, IReadOnlyList<PlotPoint> Points)
{
    /// <summary>Look of an ink by its name.</summary>
    public static PlotLook LookOf(string ink) =>
        Enum.TryParse(ink.Replace(" ", "", StringComparison.Ordinal), ignoreCase: true, out PlotLook look) && look >= PlotLook.Cyan ? look : PlotLook.Plain;
}
