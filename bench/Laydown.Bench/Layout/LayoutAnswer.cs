namespace Laydown.Bench.Layout;

/// <summary>What came out.</summary>
/// <param name="Ours">The value, in the unit of the best published one.</param>
/// <param name="Unit">Its unit, such as <c>boards</c>.</param>
/// <param name="Bound">A bound that was proven on the way, or null.</param>
/// <param name="Faults">What the independent checker says; empty for a layout that is right.</param>
internal sealed record LayoutAnswer(double Ours, string Unit, double? Bound, IReadOnlyList<string> Faults);
