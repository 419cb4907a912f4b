namespace Laydown.Formats.Icc;

/// <summary>Editions of the ICC format that profiles are written in. [ICC1]</summary>
public enum IccEdition
{
    /// <summary>2.4: tables of 16 bits, read by every program.</summary>
    V2,

    /// <summary>4.3: tables with curves on both sides, a profile ID.</summary>
    V4,
}
