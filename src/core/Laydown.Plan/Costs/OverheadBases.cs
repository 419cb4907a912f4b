using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>How much a run has of everything that overhead can be spread on.</summary>
/// <param name="Cost">All its cost.</param>
/// <param name="Labour">Pay of the people at the press and after it.</param>
/// <param name="PressHours">Time at the press, h.</param>
/// <param name="LabourHours">Hours of people at the press and after it, h.</param>
public sealed record OverheadBases(Money Cost, Money Labour, decimal PressHours, decimal LabourHours)
{
    /// <summary>How much of one of them: money units or h.</summary>
    public decimal Of(OverheadBase which) => which switch
    {
        OverheadBase.Labour => Labour.Units,
        OverheadBase.PressHours => PressHours,
        OverheadBase.LabourHours => LabourHours,
        _ => Cost.Units,
    };
}
