using Laydown.Measures;

namespace Laydown.Optics.Panels;

/// <summary>How the two pictures shall be traded against each other.</summary>
public sealed record PanelWish
{
    /// <summary>A wish.</summary>
    /// <param name="nightWeight">Weight of the night view against the day view, 0.01 to 100: 0.1 day first, 1 balanced, 10 night
    /// first.</param>
    /// <param name="white">How the strength of the white may be chosen.</param>
    /// <param name="whiteStrengths">Shares of the full laydown of the white layers, over 0 to 1: one when fixed, two to eight steps when
    /// stepped, least and most when free.</param>
    /// <param name="liftPercent">L* that day black becomes, 0 to 60; null: chosen.</param>
    /// <param name="nightExposure">Night white over the light of the bare panel, 0.02 to 1; null: chosen.</param>
    /// <param name="keepContrast">Whether areas out of reach are moved as a whole, so that what is in them stays visible.</param>
    /// <param name="viewingDistanceMm">Distance of the viewer, mm, 200 to 100 000.</param>
    /// <exception cref="ArgumentException">A value outside its range, or strengths that do not fit the use of white.</exception>
    public PanelWish(
        double nightWeight, WhiteUse white, IReadOnlyList<double> whiteStrengths, double? liftPercent, double? nightExposure, bool keepContrast,
        double viewingDistanceMm)
    {
        (NightWeight, White, KeepContrast) = (Bounds.Within(nightWeight, 0.01, 100), white, keepContrast);
        WhiteStrengths = [.. whiteStrengths.Select(s => Bounds.Within(s, 0.01, 1)).Order()];
        bool fits = white switch
        {
            WhiteUse.Fixed => whiteStrengths.Count == 1,
            WhiteUse.Stepped => whiteStrengths.Count is >= 2 and <= 8,
            _ => whiteStrengths.Count == 2,
        };
        if (!fits)
        {
            throw new ArgumentException(
                Invariant($"White strengths: found {whiteStrengths.Count} for {white}; wanted 1 when fixed, 2 to 8 when stepped, 2 when free."),
                nameof(whiteStrengths));
        }

        LiftPercent = liftPercent is { } lift ? Bounds.Within(lift, 0, 60, nameof(liftPercent)) : null;
        NightExposure = nightExposure is { } exposure ? Bounds.Within(exposure, 0.02, 1, nameof(nightExposure)) : null;
        ViewingDistanceMm = Bounds.Within(viewingDistanceMm, 200, 100_000);
    }

    /// <summary>Weight of the night view against the day view.</summary>
    public double NightWeight { get; init; }

    /// <summary>How the strength of the white may be chosen.</summary>
    public WhiteUse White { get; }

    /// <summary>Shares of the full laydown of the white layers, rising.</summary>
    public IReadOnlyList<double> WhiteStrengths { get; }

    /// <summary>L* that day black becomes; null: chosen.</summary>
    public double? LiftPercent { get; init; }

    /// <summary>Night white over the light of the bare panel; null: chosen.</summary>
    public double? NightExposure { get; init; }

    /// <summary>Whether areas out of reach are moved as a whole.</summary>
    public bool KeepContrast { get; }

    /// <summary>Distance of the viewer, mm.</summary>
    public double ViewingDistanceMm { get; }

    /// <summary>Balanced, one white at full laydown, the rest chosen, seen from 1.5 m.</summary>
    public static PanelWish Balanced { get; } = new(1, WhiteUse.Fixed, [1], null, null, keepContrast: true, 1500);
}
