using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Shop.Layers;

namespace Laydown.Shop.Colour;

/// <summary>What is known of the optics of a print condition's inks.</summary>
/// <param name="Condition">The print condition.</param>
/// <param name="Inks">Its ink set.</param>
/// <param name="Optics">The optics that hold for it, or null while there are none.</param>
/// <param name="Lights">Every ink of the set at full laydown, with where that comes from.</param>
/// <param name="Missing">What is missing for which ink; empty where all rests on readings.</param>
/// <param name="Hiding">What the white hides and lets through by its strength; empty without a white.</param>
public sealed record InkOpticsView(
    PrintCondition Condition,
    InkSet Inks,
    InkOptics? Optics,
    IReadOnlyList<RoleLight> Lights,
    IReadOnlyList<Finding> Missing,
    IReadOnlyList<HidingStep> Hiding);
