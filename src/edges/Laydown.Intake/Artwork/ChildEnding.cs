namespace Laydown.Intake.Artwork;

/// <summary>Ways a child process can end.</summary>
public enum ChildEnding
{
    /// <summary>It ended by itself; its exit code says how.</summary>
    Ended,

    /// <summary>There is no such program on this machine.</summary>
    Missing,

    /// <summary>It ran longer than allowed and was ended with all its children.</summary>
    OutOfTime,
}
