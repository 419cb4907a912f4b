namespace Laydown.Layout.Repeats;

/// <summary>How boards that are printed on both faces are turned.</summary>
/// <param name="Way">How the backs come onto the sheets.</param>
/// <param name="About">About which edge of the sheet.</param>
/// <param name="RegisterMm">How far front and back may lie apart, mm, over 0 to 50; null for what is reckoned from lays, tolerance of the sheet and growth. The bleed must cover it.</param>
public sealed record TurnWish(BackWay Way = BackWay.Sheetwise, TurnedAbout About = TurnedAbout.Least, double? RegisterMm = null);
