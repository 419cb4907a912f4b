namespace Laydown.Layout.Packing;

/// <summary>A piece put down.</summary>
/// <param name="Type">Index of its type.</param>
/// <param name="Place">Its grown rectangle.</param>
/// <param name="Turned">Whether it lies turned.</param>
internal readonly record struct Spot(int Type, Box Place, bool Turned);
