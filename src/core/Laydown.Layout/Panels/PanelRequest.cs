using Laydown.Measures;

namespace Laydown.Layout.Panels;

/// <summary>A graphic to be parted, and what the stock takes.</summary>
/// <param name="Id">Whose graphic, for faults.</param>
/// <param name="Graphic">Printed size, bleed included, mm.</param>
/// <param name="BleedMm">Bleed on each side, contained in the size, mm: seams wanted and places kept out count from the finished piece.</param>
/// <param name="Most">Largest panel the stock takes as it lies, mm: of a roll its printable width and the length there is.</param>
/// <param name="MayTurn">Whether panels may be printed lying on their side; all of a graphic then do.</param>
/// <param name="Wish">How it is to be parted.</param>
/// <param name="KeepOuts">Places that seams should stay out of.</param>
public sealed record PanelRequest(
    string Id, SizeMm Graphic, double BleedMm, SizeMm Most, bool MayTurn, PanelWish Wish, IReadOnlyList<SeamKeepOut> KeepOuts);
