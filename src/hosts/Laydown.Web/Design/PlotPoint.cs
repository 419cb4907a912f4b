namespace Laydown.Web.Design;

/// <summary>A point of a series.</summary>
/// <param name="X">Along.</param>
/// <param name="Y">Up.</param>
/// <param name="Name">Its name in the table of values; may be empty.</param>
public readonly record struct PlotPoint(double X, double Y, string Name = "");
