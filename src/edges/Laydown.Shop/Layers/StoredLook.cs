namespace Laydown.Shop.Layers;

/// <summary>A look and where it lies.</summary>
/// <param name="Record">The look.</param>
/// <param name="Folder">Full path of its folder; made by the shop.</param>
public sealed record StoredLook(LookRecord Record, string Folder);
