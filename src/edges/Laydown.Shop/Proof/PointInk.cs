using Laydown.Press.Inks;

namespace Laydown.Shop.Proof;

/// <summary>One ink at a place.</summary>
/// <param name="Role">The ink.</param>
/// <param name="Name">Its name in press files.</param>
/// <param name="Percent">Laydown, percent of full.</param>
public sealed record PointInk(InkRole Role, string Name, double Percent);
