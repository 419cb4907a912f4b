namespace Laydown.Plan.Week;

/// <summary>Which borders of a move rise by one from each move of a sweep to the next; the others stay.</summary>
[Flags]
internal enum SequenceRising
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>The border before the first block.</summary>
    First = 1,

    /// <summary>The border after it.</summary>
    Second = 2,

    /// <summary>The border before the other block.</summary>
    Third = 4,

    /// <summary>The border after that.</summary>
    End = 8,
}
