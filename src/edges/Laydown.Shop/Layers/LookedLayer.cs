using Laydown.Press.Stacks;

namespace Laydown.Shop.Layers;

/// <summary>One printed layer of a look.</summary>
/// <param name="Face">The face it is printed on.</param>
/// <param name="Group">What it is made of.</param>
/// <param name="LimitPercent">Largest sum of its inks at one pixel, percent of one full ink; every pixel of the planes keeps it.</param>
/// <param name="Inks">Its planes, in the order they lie in the file.</param>
public sealed record LookedLayer(SheetFace Face, InkGroup Group, double LimitPercent, IReadOnlyList<LookPlane> Inks);
