namespace Laydown.Raster.Passes;

/// <summary>What bands are forecast for.</summary>
/// <param name="Plan">Which nozzle fires which dot.</param>
/// <param name="Inks">The inks, in the order of the picture's planes; at least one.</param>
/// <param name="Picture">What is printed.</param>
/// <param name="Errors">Errors of placement.</param>
/// <param name="Viewer">Who looks at it.</param>
/// <param name="Mended">Whether rows of missing nozzles are made good by their neighbours, as <see cref="NozzleMend"/> does.</param>
public sealed record BandWish(
    PassPlan Plan, IReadOnlyList<BandInk> Inks, BandPicture Picture, PlacementErrors Errors, BandViewer Viewer, bool Mended = false);
