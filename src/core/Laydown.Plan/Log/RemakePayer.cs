namespace Laydown.Plan.Log;

/// <summary>Who pays for a remake.</summary>
public enum RemakePayer
{
    /// <summary>The shop.</summary>
    Shop,

    /// <summary>The customer.</summary>
    Customer,

    /// <summary>A supplier.</summary>
    Supplier,
}
