namespace Laydown.Optics.Looks;

/// <summary>A number of <see cref="SpotNumbers"/> that can be mapped over a picture.</summary>
public enum SpotMap
{
    /// <summary><see cref="SpotNumbers.ContrastRatio"/>.</summary>
    ContrastRatio,

    /// <summary><see cref="SpotNumbers.TransmissionPercent"/>.</summary>
    TransmissionPercent,

    /// <summary><see cref="SpotNumbers.RelativeTransmissionPercent"/>.</summary>
    RelativeTransmissionPercent,

    /// <summary><see cref="SpotNumbers.DayCdPerM2"/>.</summary>
    DayCdPerM2,

    /// <summary><see cref="SpotNumbers.LitCdPerM2"/>.</summary>
    LitCdPerM2,

    /// <summary><see cref="SpotNumbers.ContrastInRoom"/>.</summary>
    ContrastInRoom,

    /// <summary><see cref="SpotNumbers.ContrastInDark"/>.</summary>
    ContrastInDark,

    /// <summary><see cref="SpotNumbers.ShowThrough"/>.</summary>
    ShowThrough,
}
