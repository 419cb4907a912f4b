namespace Laydown.Optics.Looks;

/// <summary>What surrounds a lit piece in the field of view; it changes how strong its contrast looks.</summary>
public enum Surround
{
    /// <summary>As bright as the piece: nothing is changed.</summary>
    Average,

    /// <summary>A dim room: exponent 1/1.25 (from memory).</summary>
    Dim,

    /// <summary>A dark room: exponent 1/1.5 (from memory).</summary>
    Dark,
}
