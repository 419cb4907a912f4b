namespace Laydown.Layout.FreePacking;

/// <summary>A piece put down.</summary>
/// <param name="Type">Index of its piece.</param>
/// <param name="Place">Its place.</param>
/// <param name="Turned">Whether it lies turned.</param>
internal readonly record struct Lying(int Type, Bare Place, bool Turned);
