namespace Laydown.Plan.Drawings;

/// <summary>A tank and what a run takes from it.</summary>
/// <param name="Id">Short name of the tank.</param>
/// <param name="Ink">Name of its ink, for people.</param>
/// <param name="CapacityMl">What it holds when full, ml, over 0.</param>
/// <param name="LowMl">Level at which the press asks for ink, ml.</param>
/// <param name="LevelMl">Level when last read, ml.</param>
/// <param name="NeedMl">What the run takes, ml, 0 or more.</param>
public sealed record TankNeed(string Id, string Ink, double CapacityMl, double LowMl, double LevelMl, double NeedMl)
{
    /// <summary>Level after the run without topping up, ml; below 0 where the tank runs dry.</summary>
    public double AfterMl => LevelMl - NeedMl;

    /// <summary>Whether ink must be topped up before or during the run.</summary>
    public bool FallsLow => AfterMl < LowMl;
}
