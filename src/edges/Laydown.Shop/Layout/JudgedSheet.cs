using Laydown.Layout.Hands;
using Laydown.Measures;

namespace Laydown.Shop.Layout;

/// <summary>One sheet of a judged layout.</summary>
/// <param name="Size">Its size, mm.</param>
/// <param name="Repeats">How often it is printed.</param>
/// <param name="FillPercent">Share under pieces, percent.</param>
/// <param name="Spots">What lies on it.</param>
/// <param name="Offcuts">Usable rectangles left over, largest first.</param>
/// <param name="Cuts">Cuts of the saw; empty where the router cuts, and where pieces lie too near.</param>
/// <param name="Stages">Stages of those cuts.</param>
public sealed record JudgedSheet(
    SizeMm Size, int Repeats, double FillPercent, IReadOnlyList<JudgedSpot> Spots, IReadOnlyList<RectMm> Offcuts, IReadOnlyList<SawCut> Cuts, int Stages);
