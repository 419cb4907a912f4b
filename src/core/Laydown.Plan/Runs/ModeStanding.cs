namespace Laydown.Plan.Runs;

/// <summary>How a mode stands to one thing it is judged by.</summary>
public enum ModeStanding
{
    /// <summary>It bears it.</summary>
    Borne,

    /// <summary>It is coarser than wished; it can be printed all the same.</summary>
    Coarse,

    /// <summary>It cannot print this.</summary>
    Out,
}
