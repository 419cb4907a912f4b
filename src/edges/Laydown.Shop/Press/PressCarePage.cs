using Laydown.Plan.Upkeep;

namespace Laydown.Shop.Press;

/// <summary>What is written down of a press.</summary>
/// <param name="State">Tanks and care tasks as last read.</param>
/// <param name="Packs">Ink on its shelf.</param>
public sealed record PressCarePage(PressState State, IReadOnlyList<InkPack> Packs);
