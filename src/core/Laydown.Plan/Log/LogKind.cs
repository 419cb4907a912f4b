namespace Laydown.Plan.Log;

/// <summary>What an entry of the log tells.</summary>
public enum LogKind
{
    /// <summary>A run was started, or went on after it had been stopped.</summary>
    Start,

    /// <summary>A run was stopped: done, or broken off.</summary>
    Stop,

    /// <summary>Level of a tank as read.</summary>
    Ink,

    /// <summary>Thickness of a sheet as measured at five points.</summary>
    Thickness,

    /// <summary>Difference of a colour as measured.</summary>
    Colour,

    /// <summary>Register as measured.</summary>
    Register,

    /// <summary>Pieces that must be printed again.</summary>
    Remake,

    /// <summary>Words.</summary>
    Note,

    /// <summary>An earlier entry was wrong and counts no more.</summary>
    Strike,

    /// <summary>Overhead of the shop that was spent.</summary>
    Overhead,
}
