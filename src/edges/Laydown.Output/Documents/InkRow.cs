namespace Laydown.Output.Documents;

/// <summary>Ink of one role on a set-up sheet.</summary>
/// <param name="Name">The ink.</param>
/// <param name="Channels">Its channels.</param>
/// <param name="PrintedMl">In the pictures, ml.</param>
/// <param name="SetUpMl">At set-up, ml.</param>
/// <param name="LevelMl">In its tanks when last read, ml.</param>
/// <param name="LowMl">Level at which the press asks for ink, ml.</param>
/// <param name="CapacityMl">What its tanks hold, ml.</param>
/// <param name="Note">What to do, or empty.</param>
internal sealed record InkRow(
    string Name, string Channels, double PrintedMl, double SetUpMl, double LevelMl, double LowMl, double CapacityMl, string Note)
{
    /// <summary>Level when the run is done, ml; below nothing where it must be topped up.</summary>
    internal double AfterMl => LevelMl - PrintedMl - SetUpMl;
}
