namespace Laydown.Artwork.Checks;

/// <summary>What a processing step's name is worth.</summary>
public enum StepName
{
    /// <summary>A group and type of the standard.</summary>
    Standard,

    /// <summary>A name with a prefix: somebody's own, allowed.</summary>
    Own,

    /// <summary>Neither.</summary>
    Unknown,
}
