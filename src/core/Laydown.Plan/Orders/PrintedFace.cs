namespace Laydown.Plan.Orders;

/// <summary>Which face of the sheet is to be printed.</summary>
public enum PrintedFace
{
    /// <summary>Derived from where the viewers stand and what the sheet does with light.</summary>
    Auto,

    /// <summary>The first surface alone.</summary>
    First,

    /// <summary>The second surface alone, seen through the sheet.</summary>
    Second,

    /// <summary>Both: the layers are shared between the faces.</summary>
    Both,
}
