using Laydown.Layout.Hands;

namespace Laydown.Shop.Layout;

/// <summary>A layout after something was done to it by hand.</summary>
/// <param name="Done">The layout, with the sheet and the piece in hand.</param>
/// <param name="Clearances">How far the piece in hand lies from what is around it; empty without one.</param>
/// <param name="Told">What was done and what is wrong with it, in sentences to be read out.</param>
/// <param name="Report">All that is to be said of the layout.</param>
public sealed record EditedLayout(HandDone Done, IReadOnlyList<Clearance> Clearances, string Told, LayoutReport Report);
