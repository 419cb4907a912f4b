namespace Laydown.Plan.Log;

/// <summary>One turn of a run at a press: from a start to the stop after it.</summary>
/// <param name="RunId">The run.</param>
/// <param name="PressId">The press.</param>
/// <param name="Start">When it was started.</param>
/// <param name="Stop">When it was stopped; null while it runs.</param>
/// <param name="StartNumber">Number of the entry that started it; 0 where it is not known.</param>
/// <param name="StopNumber">Number of the entry that stopped it; null while it runs, 0 where it is not known.</param>
public sealed record RunTurn(string RunId, string PressId, DateTimeOffset Start, DateTimeOffset? Stop, long StartNumber = 0, long? StopNumber = null);
