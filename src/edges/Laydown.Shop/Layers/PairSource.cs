namespace Laydown.Shop.Layers;

/// <summary>Where one picture of a pair comes from.</summary>
/// <param name="File">Name of the file, without its folder.</param>
/// <param name="Page">Page from 1.</param>
/// <param name="Frame">Frame of an animation or image of a file of several, from 1; null where the file may hold one only.</param>
public sealed record PairSource(string File, int Page, int? Frame);
