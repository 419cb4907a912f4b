using Laydown.Colour.Spaces;

namespace Laydown.Press.Conditions;

/// <summary>A colour as files of people hold it.</summary>
/// <param name="L">L*, 0 to 100.</param>
/// <param name="A">a*, −128 to 128.</param>
/// <param name="B">b*, −128 to 128.</param>
public sealed record LabColour(double L, double A, double B)
{
    /// <summary>The same for computing.</summary>
    public Lab ToLab() => new(L, A, B);

    /// <summary>A computed colour, rounded to a thousandth.</summary>
    public static LabColour From(Lab lab) => new(Math.Round(lab.L, 3), Math.Round(lab.A, 3), Math.Round(lab.B, 3));
}
