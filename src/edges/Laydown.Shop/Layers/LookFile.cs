namespace Laydown.Shop.Layers;

/// <summary>One file of a look's folder.</summary>
/// <param name="Name">Plain name.</param>
/// <param name="Bytes">Length.</param>
/// <param name="Sha256">SHA-256, lower-case hex.</param>
public sealed record LookFile(string Name, long Bytes, string Sha256);
