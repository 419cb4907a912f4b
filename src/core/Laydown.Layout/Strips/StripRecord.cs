namespace Laydown.Layout.Strips;

/// <summary>A strip that takes everything, and the order that filled it.</summary>
/// <param name="Height">Its height.</param>
/// <param name="Copies">Copy at each place of the order.</param>
/// <param name="Preferred">Way that each place prefers.</param>
/// <param name="Ways">Way of each copy put down: copy × ways + way.</param>
/// <param name="Xs">Left side of each copy put down.</param>
/// <param name="Ys">Lower side of each copy put down.</param>
internal sealed record StripRecord(int Height, int[] Copies, int[] Preferred, int[] Ways, int[] Xs, int[] Ys);
