namespace Laydown.Shop.Proof;

/// <summary>What changes while a person drags.</summary>
/// <param name="NightWeight">Weight of the night view against the day view, 0.01 to 100.</param>
/// <param name="WhiteStrength">Share of the full laydown of the white, 0.01 to 1.</param>
/// <param name="LiftPercent">L* that day black becomes, 0 to 60.</param>
/// <param name="NightExposure">Night white over the light of the bare panel, 0.02 to 1.</param>
public sealed record PreviewWish(double NightWeight, double WhiteStrength, double LiftPercent, double NightExposure);
