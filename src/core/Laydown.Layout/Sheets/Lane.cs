namespace Laydown.Layout.Sheets;

/// <summary>A strip of the belt that takes blanks, one behind the other.</summary>
/// <param name="Number">From 1, from the belt's origin.</param>
/// <param name="StartMm">Where it starts across the belt: the side lay, mm.</param>
/// <param name="WidthMm">Width of the blank lying in it, mm.</param>
/// <param name="Blanks">How many blanks go through it.</param>
public sealed record Lane(int Number, double StartMm, double WidthMm, int Blanks);
