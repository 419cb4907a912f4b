namespace Laydown.Shop.Layers;

/// <summary>One colour of a map's legend.</summary>
/// <param name="Red">Red, 0 to 255.</param>
/// <param name="Green">Green.</param>
/// <param name="Blue">Blue.</param>
/// <param name="Words">What it stands for.</param>
public sealed record MapKey(byte Red, byte Green, byte Blue, string Words);
