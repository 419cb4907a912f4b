namespace Laydown.Colour.Calibration;

/// <summary>What a drift asks for.</summary>
public enum DriftVerdict
{
    /// <summary>Use the print condition as it is.</summary>
    Use,

    /// <summary>Tones moved: make new curves from a wedge.</summary>
    Relinearise,

    /// <summary>Stock, full inks or overprints moved: print and read the whole chart again.</summary>
    Recharacterise,
}
