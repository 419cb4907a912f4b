namespace Laydown.Shop.Run;

/// <summary>A part of a made sheet at the pixels of its files.</summary>
/// <param name="Left">First column.</param>
/// <param name="Top">First row, from the top.</param>
/// <param name="Columns">Columns.</param>
/// <param name="Rows">Rows.</param>
/// <param name="LeftMm">Left edge, mm from the left of the sheet as it lies on the belt.</param>
/// <param name="TopMm">Upper edge, mm from the top.</param>
/// <param name="IsDots">Whether the press's dots are shown, else contone.</param>
/// <param name="Inks">Every ink of what is seen.</param>
/// <param name="Pieces">Names of the pieces that lie there.</param>
/// <param name="Png">The picture.</param>
public sealed record SheetCrop(
    int Left, int Top, int Columns, int Rows, double LeftMm, double TopMm, bool IsDots, IReadOnlyList<CropInk> Inks, IReadOnlyList<string> Pieces,
    [property: System.Text.Json.Serialization.JsonIgnore] byte[] Png);
