namespace Laydown.Press.Machines;

/// <summary>An ink tank.</summary>
/// <param name="Id">Short name.</param>
/// <param name="CapacityMl">What it holds when full, ml.</param>
/// <param name="LowMl">Level at which the press asks for ink, ml.</param>
/// <param name="LevelMl">Level when last read, ml; 0 to the capacity.</param>
/// <param name="TopUpWhilePrinting">Whether ink may be topped up during a run.</param>
/// <param name="Circulates">Whether the line circulates by itself (white).</param>
public sealed record Tank(string Id, double CapacityMl, double LowMl, double LevelMl, bool TopUpWhilePrinting, bool Circulates);
