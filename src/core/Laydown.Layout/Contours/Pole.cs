namespace Laydown.Layout.Contours;

/// <summary>A circle that lies wholly in the material.</summary>
internal readonly record struct Pole(double X, double Y, double Radius);
