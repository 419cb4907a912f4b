namespace Laydown.Plan.Log;

/// <summary>What on a chart tells that something changed. [Nelson1984], from memory.</summary>
public enum RunRule
{
    /// <summary>One point beyond a limit.</summary>
    BeyondLimit,

    /// <summary>Nine points in a row on one side of the centre.</summary>
    NineOnOneSide,

    /// <summary>Six points in a row each higher, or each lower, than the one before.</summary>
    SixRisingOrFalling,

    /// <summary>Two of three points in a row in the outer third between centre and limit, or beyond, on the same side.</summary>
    TwoOfThreeFarOut,

    /// <summary>Four of five points in a row in the outer two thirds, or beyond, on the same side.</summary>
    FourOfFiveOut,
}
