namespace Laydown.Colour.Calibration;

/// <summary>What a limit of ink comes from.</summary>
public enum LimitReason
{
    /// <summary>Nothing stands against the full ink.</summary>
    None,

    /// <summary>More ink makes the colour no stronger.</summary>
    ChromaStopsRising,

    /// <summary>More ink turns the hue away from that of half the ink.</summary>
    HueTurns,

    /// <summary>More ink hardly darkens.</summary>
    DensitySlope,

    /// <summary>The operator set it: cure, cracking, wetting.</summary>
    Operator,

    /// <summary>More ink in overprints changes the colour no more.</summary>
    OverprintStopsChanging,

    /// <summary>The largest patch that the operator marked as clean: no bleed, no cure defect.</summary>
    LargestCleanPatch,
}
