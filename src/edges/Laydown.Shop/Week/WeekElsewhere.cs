using Laydown.Measures;

namespace Laydown.Shop.Week;

/// <summary>A run on another press: planned anew for it, or refused in words.</summary>
/// <param name="RunId">The run.</param>
/// <param name="PressId">The press.</param>
/// <param name="Offer">What it would be there; null where that press cannot print it.</param>
/// <param name="Faults">Why it cannot; empty where it can.</param>
public sealed record WeekElsewhere(string RunId, string PressId, WeekOffer? Offer, IReadOnlyList<InputFault> Faults);
