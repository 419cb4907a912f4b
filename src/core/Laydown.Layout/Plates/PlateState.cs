namespace Laydown.Layout.Plates;

/// <summary>How far cutting has come: the open column, the open row in it, and what may still change of them.</summary>
internal struct PlateState
{
    /// <summary>Plate, from 0; −1 before the first.</summary>
    internal int Plate;

    /// <summary>Left cut of the open column.</summary>
    internal int Left;

    /// <summary>Least place of its right cut that the closed rows allow.</summary>
    internal int RightOfRows;

    /// <summary>Least place of its right cut, the open row minded too.</summary>
    internal int Right;

    /// <summary>Greatest place its right cut may take.</summary>
    internal int MostRight;

    /// <summary>Lower cut of the open row.</summary>
    internal int Bottom;

    /// <summary>Least place of its upper cut; the lower cut while the row is empty.</summary>
    internal int Top;

    /// <summary>Greatest place its upper cut may take.</summary>
    internal int MostTop;

    /// <summary>Where the next cell of the open row begins.</summary>
    internal int Next;

    /// <summary>Whether a closed row ends at its least right cut: then this moves by a least waste or not at all.</summary>
    internal bool RowsTouchRight;

    /// <summary>The same, the open row minded too.</summary>
    internal bool TouchRight;

    /// <summary>Whether a cell of the open row ends at its upper cut.</summary>
    internal bool TouchTop;

    /// <summary>Whether the upper cut may not move at all.</summary>
    internal bool TopFixed;

    /// <summary>Panes cut.</summary>
    internal int Count;

    /// <summary>Area of the panes cut.</summary>
    internal long Area;

    /// <summary>Mark of the set of panes cut.</summary>
    internal ulong Mark;

    /// <summary>The state before: its place in the beam.</summary>
    internal int Parent;

    /// <summary>The step that led here.</summary>
    internal PlateStep Step;
}
