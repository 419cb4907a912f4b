namespace Laydown.Shop.Run;

/// <summary>How far a run is.</summary>
public enum RunState
{
    /// <summary>Planned; press files not made.</summary>
    Waiting,

    /// <summary>Press files are being made.</summary>
    InProgress,

    /// <summary>Press files are made and whole.</summary>
    Completed,

    /// <summary>Making failed or was cancelled; nothing is left of it.</summary>
    Aborted,
}
