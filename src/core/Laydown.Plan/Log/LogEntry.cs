using Laydown.Plan.Costs;

namespace Laydown.Plan.Log;

/// <summary>One entry of the log. The log only grows: what was wrong is struck by a later entry.</summary>
/// <param name="Number">Counted up as entries come, from 1; 0 until it is kept.</param>
/// <param name="At">When it happened, with the offset of the place.</param>
/// <param name="Kind">What it tells; the field of that name is set.</param>
/// <param name="RunId">The run; null where it belongs to a press alone.</param>
/// <param name="PressId">The press.</param>
/// <param name="By">Who tells; may be empty.</param>
/// <param name="Note">Words; null for none.</param>
/// <param name="Stop">How the run was stopped.</param>
/// <param name="Ink">Level of a tank.</param>
/// <param name="Thickness">Thickness of a sheet.</param>
/// <param name="Colour">Difference of a colour.</param>
/// <param name="Register">Register.</param>
/// <param name="Remake">What must be printed again.</param>
/// <param name="Strikes">Number of the entry that counts no more.</param>
/// <param name="Actual">With the stop that ends a run: what it took.</param>
/// <param name="Struck">Whether this entry counts no more; told by the store.</param>
/// <param name="Overhead">Overhead that was spent; belongs to no run and no press.</param>
public sealed record LogEntry(
    long Number,
    DateTimeOffset At,
    LogKind Kind,
    string? RunId,
    string PressId,
    string By = "",
    string? Note = null,
    RunStop? Stop = null,
    TankReading? Ink = null,
    SheetThickness? Thickness = null,
    ColourReading? Colour = null,
    RegisterReading? Register = null,
    RemakeNote? Remake = null,
    long? Strikes = null,
    RunActual? Actual = null,
    bool Struck = false,
    OverheadSpent? Overhead = null);
