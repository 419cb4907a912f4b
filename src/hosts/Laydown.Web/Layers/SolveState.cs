using Laydown.Measures;

namespace Laydown.Web.Layers;

/// <summary>How far the solving of a panel is.</summary>
/// <param name="Busy">Whether it goes on, or waits its turn.</param>
/// <param name="DonePercent">Done of the whole, percent.</param>
/// <param name="Step">What is being done, or how it ended.</param>
/// <param name="LookId">The look that came of it, or null.</param>
/// <param name="Faults">Why none did.</param>
public sealed record SolveState(bool Busy, double DonePercent, string Step, string? LookId, IReadOnlyList<InputFault> Faults);
