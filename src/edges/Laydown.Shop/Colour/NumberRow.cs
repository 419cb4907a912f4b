namespace Laydown.Shop.Colour;

/// <summary>One row of a table of numbers.</summary>
/// <param name="Line">Line of the file, from 1.</param>
/// <param name="Name">Value of a column <c>id</c> or <c>name</c>, else empty.</param>
/// <param name="Values">A finite number for each column.</param>
public sealed record NumberRow(int Line, string Name, IReadOnlyList<double> Values);
