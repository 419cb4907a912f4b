using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Design;

/// <summary>A plot with axes, ticks and units, its key, and under it the same values as a table for whoever cannot see it.</summary>
public sealed partial class PlotFrame
{
    private const int MostRows = 60;
    private const double Top = 12;
    private const double Left = 62;
    private IReadOnlyList<double> xTicks = [];
    private IReadOnlyList<double> yTicks = [];
    private bool named;

    /// <summary>What is plotted.</summary>
    [Parameter, EditorRequired]
    public string Title { get; set; } = "";

    /// <summary>How to read it.</summary>
    [Parameter]
    public string? Note { get; set; }

    /// <summary>The axis along.</summary>
    [Parameter, EditorRequired]
    public PlotAxis X { get; set; } = null!;

    /// <summary>The axis up.</summary>
    [Parameter, EditorRequired]
    public PlotAxis Y { get; set; } = null!;

    /// <summary>The series, drawn in this order.</summary>
    [Parameter, EditorRequired]
    public IReadOnlyList<PlotSeries> Series { get; set; } = [];

    /// <summary>Whether both axes have the same scale, as for a* and b*.</summary>
    [Parameter]
    public bool Square { get; set; }

    private double Width => Square ? 520 : 620;

    private double Right => Width - 16;

    private double Bottom => Height - 44;

    private double Height => Square ? 44 + Top + ((Right - Left) * (Y.Most - Y.Least) / (X.Most - X.Least)) : 330;

    private string Grid
    {
        get
        {
            StringBuilder path = new();
            foreach (double tick in xTicks)
                path.Append(CultureInfo.InvariantCulture, $"M{N(AtX(tick))} {N(Top)}V{N(Bottom)}");
            foreach (double tick in yTicks)
                path.Append(CultureInfo.InvariantCulture, $"M{N(Left)} {N(AtY(tick))}H{N(Right)}");
            return path.ToString();
        }
    }

    // The frame's two axes, and the zero lines where they lie inside.
    private string Axes
    {
        get
        {
            StringBuilder path = new();
            path.Append(CultureInfo.InvariantCulture, $"M{N(Left)} {N(Top)}V{N(Bottom)}H{N(Right)}");
            if (X.Least < 0 && X.Most > 0)
                path.Append(CultureInfo.InvariantCulture, $"M{N(AtX(0))} {N(Top)}V{N(Bottom)}");
            if (Y.Least < 0 && Y.Most > 0)
                path.Append(CultureInfo.InvariantCulture, $"M{N(Left)} {N(AtY(0))}H{N(Right)}");
            return path.ToString();
        }
    }

    /// <inheritdoc/>
    protected override void OnParametersSet()
    {
        xTicks = X.Ticks(8);
        yTicks = Y.Ticks(Square ? 8 : 6);
        named = Series.Any(s => s.Points.Any(p => p.Name.Length > 0));
    }

    private double AtX(double value) => Left + ((Right - Left) * (Math.Clamp(value, X.Least, X.Most) - X.Least) / (X.Most - X.Least));

    private double AtY(double value) => Bottom - ((Bottom - Top) * (Math.Clamp(value, Y.Least, Y.Most) - Y.Least) / (Y.Most - Y.Least));

    private string Path(PlotSeries series)
    {
        StringBuilder path = new();
        double bar = BarWidth(series);
        foreach ((int i, PlotPoint point) in series.Points.Index())
        {
            double x = AtX(point.X), y = AtY(point.Y);
            _ = series.Mark switch
            {
                PlotMark.Dots => path.Append(Shape(series.Look, x, y, 3.2)),
                PlotMark.Bars => path.Append(CultureInfo.InvariantCulture, $"M{N(x - (bar / 2))} {N(Bottom)}V{N(y)}H{N(x + (bar / 2))}V{N(Bottom)}Z"),
                _ => path.Append(CultureInfo.InvariantCulture, $"{(i == 0 ? "M" : "L")}{N(x)} {N(y)}"),
            };
        }

        return series.Mark == PlotMark.Outline && series.Points.Count > 0 ? path + "Z" : path.ToString();
    }

    private double BarWidth(PlotSeries series) => series.Points.Count < 2
        ? 20
        : Math.Max(1, Math.Abs(AtX(series.Points[1].X) - AtX(series.Points[0].X)) - 2);

    private static string Shape(PlotLook look, double x, double y, double r) => look switch
    {
        PlotLook.Warn => Invariant($"M{N(x)} {N(y - r)}l{N(r)} {N(1.8 * r)}h{N(-2 * r)}z"),
        PlotLook.Stop => Invariant($"M{N(x - r)} {N(y - r)}h{N(2 * r)}v{N(2 * r)}h{N(-2 * r)}z"),
        PlotLook.Act => Invariant($"M{N(x)} {N(y - (1.2 * r))}l{N(1.2 * r)} {N(1.2 * r)}l{N(-1.2 * r)} {N(1.2 * r)}l{N(-1.2 * r)} {N(-1.2 * r)}z"),
        _ => Invariant($"M{N(x - r)} {N(y)}a{N(r)} {N(r)} 0 1 0 {N(2 * r)} 0a{N(r)} {N(r)} 0 1 0 {N(-2 * r)} 0z"),
    };

    private static string Class(string part, PlotSeries series) => Invariant($"plot-{part} look-{series.Look.ToString().ToLowerInvariant()}");

    private static string Number(double value) =>
        (Math.Abs(value) < 1e-9 ? 0 : value).ToString("0.###", CultureInfo.InvariantCulture).Replace('-', '−');

    private static string N(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
