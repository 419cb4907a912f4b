namespace Laydown.Plan.Drawings;

/// <summary>Kinds of lettering of the drawings.</summary>
internal enum Lettering
{
    /// <summary>Names.</summary>
    Name,

    /// <summary>Plain words.</summary>
    Word,

    /// <summary>Explanations.</summary>
    Quiet,

    /// <summary>Numbers with units, in figures of equal width.</summary>
    Figure,

    /// <summary>What must be seen first.</summary>
    Accent,
}
