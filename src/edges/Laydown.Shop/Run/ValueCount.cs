namespace Laydown.Shop.Run;

/// <summary>How often a value occurs.</summary>
/// <param name="Value">The value.</param>
/// <param name="Count">How often.</param>
public sealed record ValueCount(int Value, long Count);
