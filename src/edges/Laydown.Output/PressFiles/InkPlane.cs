using Laydown.Press.Inks;

namespace Laydown.Output.PressFiles;

/// <summary>One plane of a layer.</summary>
/// <param name="Role">The ink.</param>
/// <param name="Name">Its name in InkNames.</param>
internal sealed record InkPlane(InkRole Role, string Name);
