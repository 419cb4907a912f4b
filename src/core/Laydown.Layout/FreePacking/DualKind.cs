namespace Laydown.Layout.FreePacking;

/// <summary>Families of dual-feasible functions.</summary>
internal enum DualKind
{
    /// <summary>The side over the length.</summary>
    Same,

    /// <summary>Sides over the length less the step count whole, sides under the step not at all.</summary>
    Threshold,

    /// <summary>Whole steps in the side, or in what it leaves.</summary>
    Rounded,

    /// <summary>Whole parts of the length in the side.</summary>
    Parts,
}
