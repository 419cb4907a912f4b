namespace Laydown.Plan.Build;

/// <summary>How much of a layer a viewer sees: whether his view changes when the layer is left out.</summary>
public enum Sight
{
    /// <summary>Nothing of it.</summary>
    Not,

    /// <summary>Parts of it: through windows of a mask, or through a thin white.</summary>
    Partly,

    /// <summary>All of it.</summary>
    Whole,
}
