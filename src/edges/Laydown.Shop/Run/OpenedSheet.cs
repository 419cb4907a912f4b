using Laydown.Optics.Looks;

namespace Laydown.Shop.Run;

/// <summary>A sheet that can be looked at, with the light it is seen in.</summary>
/// <param name="Sheet">The sheet.</param>
/// <param name="Run">Its run.</param>
/// <param name="Light">Light of its stack.</param>
/// <param name="Acting">What acts of what is sent, for each plane; null where nothing is known.</param>
public sealed record OpenedSheet(PressSheet Sheet, Laydown.Plan.Runs.Run Run, StackLight Light, IReadOnlyList<IReadOnlyList<byte>?> Acting);
