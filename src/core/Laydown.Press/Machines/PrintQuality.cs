namespace Laydown.Press.Machines;

/// <summary>Grade of a mode, in the words of CIP4 XJDF [XJDF21].</summary>
public enum PrintQuality
{
    /// <summary>For far viewing and proofs of layout.</summary>
    Draft,

    /// <summary>The everyday grade.</summary>
    Normal,

    /// <summary>For close viewing, small text and codes.</summary>
    High,
}
