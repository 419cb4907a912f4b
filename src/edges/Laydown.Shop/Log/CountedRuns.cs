namespace Laydown.Shop.Log;

/// <summary>Which runs count in a review of overhead.</summary>
public enum CountedRuns
{
    /// <summary>Runs the log says were done in the time.</summary>
    Done,

    /// <summary>Runs that are due in the time, done or not: what the work on hand will carry.</summary>
    Due,
}
