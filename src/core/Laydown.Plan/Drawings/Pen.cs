namespace Laydown.Plan.Drawings;

/// <summary>Kinds of line of the drawings. Things are told apart by line and hatch, never by colour alone.</summary>
internal enum Pen
{
    /// <summary>Outline of a thing.</summary>
    Edge,

    /// <summary>Thin line: sizes, leaders, hatches.</summary>
    Hair,

    /// <summary>Thinner still: grids and ghosts.</summary>
    Faint,

    /// <summary>Broken thin line: margins and limits.</summary>
    Broken,

    /// <summary>The one accent: what the person at the press must do or see.</summary>
    Accent,
}
