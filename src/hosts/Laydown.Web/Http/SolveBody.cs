using Laydown.Shop.Layers;

namespace Laydown.Web.Http;

/// <summary>What is wished when an item's panel is solved over HTTP; what is left out is as usual. The pictures are pages of the item's artwork.</summary>
/// <param name="Ppi">Resolution, 10 to 600 ppi; 150 when left out.</param>
/// <param name="ConditionId">Print condition.</param>
/// <param name="NightWeight">Weight of the night picture.</param>
/// <param name="White">Use of the white.</param>
/// <param name="WhiteStrengths">Strengths of the white, shares of full laydown.</param>
/// <param name="LiftPercent">L* that day black becomes.</param>
/// <param name="NightExposure">White of the night picture over the light of the bare panel.</param>
/// <param name="KeepContrast">Whether local contrast is kept.</param>
/// <param name="ViewingDistanceMm">Distance of the viewer, mm.</param>
/// <param name="DayPlacing">How the day picture is laid on the piece.</param>
/// <param name="NightPlacing">How the night picture is laid on it.</param>
/// <param name="Points">Places named in both pictures.</param>
/// <param name="Note">Words kept with the look.</param>
public sealed record SolveBody(
    double? Ppi,
    string? ConditionId,
    double? NightWeight,
    WhiteChoice? White,
    IReadOnlyList<double>? WhiteStrengths,
    double? LiftPercent,
    double? NightExposure,
    bool? KeepContrast,
    double? ViewingDistanceMm,
    PairPlacing? DayPlacing,
    PairPlacing? NightPlacing,
    IReadOnlyList<PairPoint>? Points,
    string? Note)
{
    /// <summary>The request for an item.</summary>
    public PanelRequest For(string itemId)
    {
        PanelRequest usual = PanelRequest.OfItem(itemId);
        LookWish wish = LookWish.Usual;
        return usual with
        {
            Ppi = Ppi ?? usual.Ppi,
            ConditionId = ConditionId,
            Note = Note,
            Pair = usual.Pair with { DayPlacing = DayPlacing ?? default, NightPlacing = NightPlacing ?? default, Points = Points ?? [] },
            Wish = new(
                NightWeight ?? wish.NightWeight, White ?? wish.White, WhiteStrengths ?? [], LiftPercent, NightExposure, KeepContrast ?? wish.KeepContrast,
                ViewingDistanceMm ?? wish.ViewingDistanceMm),
        };
    }
}
