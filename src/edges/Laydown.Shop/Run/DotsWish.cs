using Laydown.Raster.Screens;

namespace Laydown.Shop.Run;

/// <summary>How the dots of a run are wanted.</summary>
/// <param name="Bits">Bits of a dot: 1 for the largest drop alone, 2 for up to three; null takes what the mode's drops need.</param>
/// <param name="Compression">How files are packed.</param>
/// <param name="Resume">Whether a make that was broken off is gone on with where its inputs are the same.</param>
/// <param name="Screen">How contone becomes dots.</param>
public sealed record DotsWish(int? Bits, DotCompression Compression, bool Resume, ScreenKind Screen = ScreenKind.Arrays);
