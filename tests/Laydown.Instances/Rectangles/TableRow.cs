using System.Globalization;

namespace Laydown.Instances.Rectangles;

/// <summary>A line of a table.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Names">Names of the columns.</param>
/// <param name="Cells">Its values.</param>
public sealed record TableRow(string File, int Line, IReadOnlyList<string> Names, IReadOnlyList<string> Cells)
{
    /// <summary>The text of a column, or null where there is none or it is empty.</summary>
    public string? Text(string column)
    {
        for (int i = 0; i < Names.Count && i < Cells.Count; i++)
            if (string.Equals(Names[i], column, StringComparison.Ordinal) && Cells[i].Trim().Length > 0)
                return Cells[i].Trim();

        return null;
    }

    /// <summary>The whole number of a column.</summary>
    /// <exception cref="InvalidDataException">There is none.</exception>
    public int Number(string column) => Text(column) is string text && RectInstance.TryNumber(text, out int number) ? number : throw Fault(column, "a whole number");

    /// <summary>The whole number of a column, or another where the column is not there.</summary>
    public int NumberOr(string column, int other) => Text(column) is null ? other : Number(column);

    /// <summary>The number of a column, or null where the column is empty or not there.</summary>
    /// <exception cref="InvalidDataException">It holds no number.</exception>
    public double? Value(string column)
    {
        if (Text(column) is not string text)
            return null;

        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) ? value : throw Fault(column, "a number");
    }

    private InvalidDataException Fault(string column, string wanted) =>
        new(string.Create(CultureInfo.InvariantCulture, $"{File}, line {Line}, {column}: found '{Text(column) ?? "nothing"}'; wanted {wanted}."));
}
