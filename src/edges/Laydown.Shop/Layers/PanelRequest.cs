namespace Laydown.Shop.Layers;

/// <summary>A panel to be solved.</summary>
/// <param name="ItemId">The item; null for a piece outside any order.</param>
/// <param name="Piece">The piece where no item is named; else null.</param>
/// <param name="DayPath">Full path of the day picture; null for page 1 of the item's artwork.</param>
/// <param name="NightPath">Full path of the night picture; null for page 2 of the item's artwork.</param>
/// <param name="Pair">Pages, frames, placing, points; file names are set from the paths.</param>
/// <param name="ConditionId">Print condition of an item; null for the one it would be printed in.</param>
/// <param name="Ppi">Resolution, 10 to 600 ppi.</param>
/// <param name="Wish">What is wished.</param>
/// <param name="Day">Light by day; null for the one proofs are drawn in.</param>
/// <param name="Night">Light with the lamp on; null for the one proofs are drawn in.</param>
/// <param name="OutFolder">Full path of the look's folder for a piece outside any order; must not exist.</param>
/// <param name="ProofProfile">Full path of an RGB profile for the proofs; null for sRGB.</param>
/// <param name="Note">Words of whoever asks, or null.</param>
public sealed record PanelRequest(
    string? ItemId,
    PanelPiece? Piece,
    string? DayPath,
    string? NightPath,
    PairWish Pair,
    string? ConditionId,
    double Ppi,
    LookWish Wish,
    LookScene? Day,
    LookScene? Night,
    string? OutFolder,
    string? ProofProfile,
    string? Note)
{
    /// <summary>Pages 1 and 2 of an item at 150 ppi, everything else usual.</summary>
    public static PanelRequest OfItem(string itemId) => new(
        itemId, null, null, null, new(new("", 1, null), new("", 2, null), PairPlacing.Careful, PairPlacing.Careful, []), null, 150, LookWish.Usual,
        null, null, null, null, null);
}
