namespace Laydown.Shop.Colour;

/// <summary>Numbers of a CSV file by the names of their columns.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Columns">Names wanted, in the order wanted.</param>
/// <param name="Rows">Rows with a number for each column.</param>
public sealed record NumberTable(string File, IReadOnlyList<string> Columns, IReadOnlyList<NumberRow> Rows);
