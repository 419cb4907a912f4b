namespace Laydown.Measures;

/// <summary>A number that can be asked "why": its value, the formula with the inputs put in, and its source.</summary>
/// <param name="Name">What it is, such as <c>time for one sheet</c>.</param>
/// <param name="Value">The value in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit as printed, such as <c>s</c>, <c>ml</c>, <c>mm</c>.</param>
/// <param name="Because">The formula with its inputs, in one line.</param>
/// <param name="Source">Key into docs/sources.md, <c>common practice, no source</c>, <c>from memory</c> or <c>demo data</c>.</param>
public sealed record Figure(string Name, double Value, string Unit, string Because, string Source);
