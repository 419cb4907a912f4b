using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Repeats;

/// <summary>Even steps of a piece.</summary>
/// <param name="Across">Steps across.</param>
/// <param name="Up">Steps along the height.</param>
/// <param name="Size">The piece as it lies, mm.</param>
/// <param name="Step">From one to the next, mm.</param>
/// <param name="Turned">Whether it lies turned.</param>
internal sealed record StepGrid(int Across, int Up, SizeMm Size, SizeMm Step, bool Turned)
{
    internal int Count => Across * Up;

    /// <summary>The first so many places of the grid in the middle of a sheet, row by row from the bottom.</summary>
    internal IReadOnlyList<Placement> Placed(Piece piece, SizeMm sheet, int firstCopy, int count)
    {
        double left = (sheet.WidthMm - (Across * Step.WidthMm) + Step.WidthMm - Size.WidthMm) / 2;
        double low = (sheet.HeightMm - (Up * Step.HeightMm) + Step.HeightMm - Size.HeightMm) / 2;
        return [.. Enumerable.Range(0, count).Select(i => new Placement(
            piece.Id, firstCopy + i,
            new RectMm(left + (i % Across * Step.WidthMm), low + (i / Across * Step.HeightMm), Size.WidthMm, Size.HeightMm), Turned, piece.Part))];
    }
}
