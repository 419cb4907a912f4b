using Laydown.Press.Inks;

namespace Laydown.Shop.Layers;

/// <summary>One plane of a look.</summary>
/// <param name="Role">The ink.</param>
/// <param name="Name">Its name in press files.</param>
public sealed record LookPlane(InkRole Role, string Name);
