namespace Laydown.Colour.Calibration;

/// <summary>What even steps of a linearised ink are even in.</summary>
public enum LinearisationAim
{
    /// <summary>Spot colour tone value: the eye's steps from stock to full ink, for any ink, white on black too [ISO20654].</summary>
    ToneValue,

    /// <summary>ΔE00 from the bare stock.</summary>
    ColourDifference,

    /// <summary>Coverage by density, (1 − 10^−D) / (1 − 10^−Dsolid), in the tristimulus value that the full ink changes most.</summary>
    Density,
}
