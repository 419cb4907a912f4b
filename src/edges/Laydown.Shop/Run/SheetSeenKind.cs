namespace Laydown.Shop.Run;

/// <summary>What of a sheet is shown.</summary>
public enum SheetSeenKind
{
    /// <summary>All layers recombined, in the light.</summary>
    All,

    /// <summary>One layer alone on the sheet, in the light.</summary>
    Layer,

    /// <summary>One ink alone as grey: bare is white, full laydown black.</summary>
    Ink,

    /// <summary>One ink alone in its own colour.</summary>
    Tint,
}
