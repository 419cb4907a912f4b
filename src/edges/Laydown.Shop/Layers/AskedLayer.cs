using Laydown.Press.Inks;
using Laydown.Press.Stacks;

namespace Laydown.Shop.Layers;

/// <summary>One layer of a stack that is asked about.</summary>
/// <param name="Face">The face it is printed on.</param>
/// <param name="Inks">Its inks in the order of their coverages; whites and colours are never in one layer.</param>
/// <param name="StrengthPercent">Strength, percent of one full laydown, over 0 to 200.</param>
public sealed record AskedLayer(SheetFace Face, IReadOnlyList<InkRole> Inks, double StrengthPercent)
{
    /// <summary>What it is made of.</summary>
    public InkGroup Group => Inks[0] switch
    {
        InkRole.White => InkGroup.White,
        InkRole.Clear => InkGroup.Clear,
        _ => InkGroup.Colour,
    };
}
