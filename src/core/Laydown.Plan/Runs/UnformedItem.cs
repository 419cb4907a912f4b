using Laydown.Measures;

namespace Laydown.Plan.Runs;

/// <summary>A ready item that no press can print.</summary>
/// <param name="Ready">The item.</param>
/// <param name="Faults">Why each press cannot; at least one.</param>
public sealed record UnformedItem(ReadyItem Ready, IReadOnlyList<InputFault> Faults);
