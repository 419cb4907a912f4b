namespace Laydown.Layout.Judging;

/// <summary>What is wrong with how pieces lie on a sheet.</summary>
public enum SheetFlawKind
{
    /// <summary>Two pieces lie on each other.</summary>
    Overlap,

    /// <summary>Two pieces lie nearer than the gap.</summary>
    Gap,

    /// <summary>A piece reaches out of the room there is.</summary>
    Outside,

    /// <summary>A piece lies on a place kept out, or nearer to it than the gap.</summary>
    KeepOut,

    /// <summary>No cut from edge to edge parts these pieces from each other.</summary>
    Uncut,
}
