namespace Laydown.Plan.Log;

/// <summary>Why pieces are printed again.</summary>
public enum RemakeCause
{
    /// <summary>The heads struck the sheet.</summary>
    HeadStrike,

    /// <summary>Light or dark bands.</summary>
    Bands,

    /// <summary>Thin lines: nozzles out.</summary>
    NozzleOut,

    /// <summary>Fuzzy or double edges, mist.</summary>
    SoftEdges,

    /// <summary>White missing, in the wrong place or order.</summary>
    White,

    /// <summary>Mirrored wrong.</summary>
    Mirrored,

    /// <summary>Wrong scale or size.</summary>
    Scale,

    /// <summary>Ink comes off.</summary>
    Adhesion,

    /// <summary>Chips or burrs at the cut edge.</summary>
    ChippedEdge,

    /// <summary>The sheet curled.</summary>
    Curl,

    /// <summary>Grey speckle under laminate, pin-points when lit.</summary>
    Silvering,

    /// <summary>Layers or faces do not meet.</summary>
    Register,

    /// <summary>Panels differ in colour.</summary>
    PanelColour,

    /// <summary>Colour is off.</summary>
    Colour,

    /// <summary>A bar code does not scan.</summary>
    Code,

    /// <summary>Ink ran out.</summary>
    InkOut,

    /// <summary>Flutes or grain run the wrong way.</summary>
    GrainWrong,

    /// <summary>Upside down on the second face.</summary>
    UpsideDown,

    /// <summary>Dust or hair.</summary>
    Dust,

    /// <summary>A fault in the file.</summary>
    File,

    /// <summary>Cut or drilled wrong.</summary>
    Cut,

    /// <summary>Scratched or broken in handling or on the way.</summary>
    Handling,

    /// <summary>Something else; the note says what.</summary>
    Other,
}
