namespace Laydown.Raster.Sheets;

/// <summary>How a picture lies on the sheet, in quarters of a turn.</summary>
public enum QuarterTurn
{
    /// <summary>Upright.</summary>
    None,

    /// <summary>By 90° counter-clockwise.</summary>
    Left,

    /// <summary>On its head.</summary>
    Half,

    /// <summary>By 90° clockwise.</summary>
    Right,
}
