namespace Laydown.Plan.Costs;

/// <summary>What overhead is spread on.</summary>
public enum OverheadBase
{
    /// <summary>All cost of a run, money.</summary>
    Cost,

    /// <summary>Pay of the people at the press and after it, money.</summary>
    Labour,

    /// <summary>Time at the press, h.</summary>
    PressHours,

    /// <summary>Hours of people at the press and after it, h.</summary>
    LabourHours,
}
