using Laydown.Layout.Packing;

namespace Laydown.Layout.Plates;

/// <summary>Panes to be cut from plates that come one after another, each with its own defects.</summary>
/// <param name="Width">Width of a plate; cuts of the first stage go upright.</param>
/// <param name="Height">Height of a plate.</param>
/// <param name="Defects">Defects by plate in the order in which plates come; plates beyond the list have none.</param>
/// <param name="Items">Panes, in the order of cutting within each stack.</param>
/// <param name="Rules">What cuts have to keep.</param>
internal sealed record PlateProblem(int Width, int Height, IReadOnlyList<IReadOnlyList<Box>> Defects, IReadOnlyList<PlateItem> Items, PlateRules Rules);
