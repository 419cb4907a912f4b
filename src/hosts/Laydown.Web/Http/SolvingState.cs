using Laydown.Measures;

namespace Laydown.Web.Http;

/// <summary>How far a solve is.</summary>
/// <param name="Busy">Whether it goes on.</param>
/// <param name="DonePercent">Done of the whole, percent, never falling.</param>
/// <param name="LookId">The look that came of it, or null.</param>
/// <param name="Faults">Why there is none.</param>
public sealed record SolvingState(bool Busy, double DonePercent, string? LookId, IReadOnlyList<InputFault> Faults);
