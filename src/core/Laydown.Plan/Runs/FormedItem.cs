using Laydown.Press.Stacks;

namespace Laydown.Plan.Runs;

/// <summary>A ready item with the stack derived for the press it goes to.</summary>
/// <param name="Ready">The item.</param>
/// <param name="Stack">Its layers on that press.</param>
public sealed record FormedItem(ReadyItem Ready, LayerStack Stack);
