namespace Laydown.Plan.Orders;

/// <summary>What is printed behind the white: for a second viewer, or for the lamp.</summary>
public enum BackPicture
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>The same picture again.</summary>
    Same,

    /// <summary>A picture of its own: page 2.</summary>
    Own,
}
