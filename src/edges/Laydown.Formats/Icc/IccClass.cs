namespace Laydown.Formats.Icc;

/// <summary>What a profile is for.</summary>
public enum IccClass
{
    /// <summary>Scanner or camera.</summary>
    Input,

    /// <summary>Screen.</summary>
    Display,

    /// <summary>Print.</summary>
    Output,

    /// <summary>A colour space in itself, such as CIELAB.</summary>
    Space,

    /// <summary>A device link: both ends in one profile.</summary>
    Link,

    /// <summary>Abstract or named colours: cannot stand at the end of a transform.</summary>
    Other,
}
