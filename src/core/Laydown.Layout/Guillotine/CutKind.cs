namespace Laydown.Layout.Guillotine;

/// <summary>What a node of a tree of cuts is.</summary>
internal enum CutKind : byte
{
    /// <summary>A bare rest.</summary>
    Bare,

    /// <summary>A piece.</summary>
    Piece,

    /// <summary>A part that is cut further.</summary>
    Part,
}
