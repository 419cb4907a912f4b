using Laydown.Press.Stacks;

namespace Laydown.Shop.Run;

/// <summary>A change of press that was carried out, with what it takes to go back.</summary>
/// <param name="Before">The run as it was.</param>
/// <param name="Stacks">Layers its items had, by item; those without layers are left out.</param>
/// <param name="HashAfter">Content hash of the run as the change left it.</param>
public sealed record PressMove(RunRecord Before, IReadOnlyDictionary<string, LayerStack> Stacks, string HashAfter);
