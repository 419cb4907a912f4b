using System.Text.Json;
using Laydown.Press.Stacks;

namespace Laydown.Shop.Run;

/// <summary>A change of press that was carried out, with what it takes to go back.</summary>
/// <param name="Before">The run as it was.</param>
/// <param name="Stacks">Layers its items had, by item; those without layers are left out.</param>
/// <param name="HashAfter">Content hash of the run as the change left it.</param>
/// <param name="Inputs">What the run was printed from before, as <see cref="RunInputs"/> tells it; null in changes that were kept before it was.</param>
public sealed record PressMove(RunRecord Before, IReadOnlyDictionary<string, LayerStack> Stacks, string HashAfter, JsonElement? Inputs = null);
