namespace Laydown.Layout.Repeats;

/// <summary>An item that is repeated in even steps on sheets of its own.</summary>
/// <param name="GapAcrossMm">Between two printed rectangles across, mm; 0 to 1000.</param>
/// <param name="GapUpMm">Between two printed rectangles along the height, mm; 0 to 1000.</param>
/// <param name="RegisterMm">How far the two faces of a sheet may lie apart, mm; 0 to 50. Of sheets printed on both faces the bleed must cover it, and gaps are at least twice as wide.</param>
public sealed record RepeatWish(double GapAcrossMm = 5, double GapUpMm = 5, double RegisterMm = 1.5);
