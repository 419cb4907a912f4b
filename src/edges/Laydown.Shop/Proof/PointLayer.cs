using Laydown.Press.Stacks;

namespace Laydown.Shop.Proof;

/// <summary>The inks of one layer at a place.</summary>
/// <param name="Number">Place in the order of printing, from 1.</param>
/// <param name="Face">The face it is printed on.</param>
/// <param name="Group">What it is made of.</param>
/// <param name="Inks">Its inks.</param>
public sealed record PointLayer(int Number, SheetFace Face, InkGroup Group, IReadOnlyList<PointInk> Inks);
