namespace Laydown.Layout.Sheets;

/// <summary>How a sheet is turned over between its two faces, said of the sheet as it is drawn.</summary>
public enum SheetTurn
{
    /// <summary>Left edge to right edge: about a line along the drawn height; the upper edge stays the upper edge.</summary>
    Sideways,

    /// <summary>Upper edge to lower edge: about a line along the drawn width; the left edge stays the left edge.</summary>
    HeadToFoot,
}
