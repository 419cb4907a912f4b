namespace Laydown.Layout.Repeats;

/// <summary>How the backs come onto the sheets.</summary>
public enum BackWay
{
    /// <summary>All fronts on the first face, then all backs on the second, from files of their own.</summary>
    Sheetwise,

    /// <summary>Fronts on one half of the sheet, backs on the other: one file is printed on both faces, and each place gives a whole piece.</summary>
    WorkAndTurn,
}
