using Laydown.Layout.Hands;

namespace Laydown.Shop.Layout;

/// <summary>A layout a search found, better than those before.</summary>
/// <param name="Number">Which improvement, from 1.</param>
/// <param name="Sheets">The layout.</param>
/// <param name="Report">All that is to be said of it.</param>
public sealed record FoundLayout(int Number, IReadOnlyList<HandSheet> Sheets, LayoutReport Report);
