namespace Laydown.Layout.Contours;

/// <summary>What a worker of the search is at.</summary>
internal enum BayAttempt
{
    /// <summary>Nothing: it wants something to do.</summary>
    None,

    /// <summary>The best layout, pushed together by a step that adapts.</summary>
    Descend,

    /// <summary>The best layout, pushed together by ever smaller steps.</summary>
    Compress,

    /// <summary>An overlapping layout that came close before, with two large forms swapped.</summary>
    Explore,
}
