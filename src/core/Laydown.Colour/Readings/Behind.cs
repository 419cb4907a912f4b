namespace Laydown.Colour.Readings;

/// <summary>What stood behind a patch while it was read. On clear and on thin white stock it is part of the sample.</summary>
public enum Behind
{
    /// <summary>The file does not say.</summary>
    Unsaid,

    /// <summary>A black backing: reflectance.</summary>
    Black,

    /// <summary>A white backing: reflectance.</summary>
    White,

    /// <summary>A lit diffuser: transmittance, the diffuser alone being 1.</summary>
    Lamp,
}
