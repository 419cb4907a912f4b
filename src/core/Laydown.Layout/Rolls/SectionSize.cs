namespace Laydown.Layout.Rolls;

/// <summary>The most a section can be.</summary>
/// <param name="Width">Width of the strip, µm.</param>
/// <param name="Longest">Length, µm.</param>
internal readonly record struct SectionSize(int Width, int Longest);
