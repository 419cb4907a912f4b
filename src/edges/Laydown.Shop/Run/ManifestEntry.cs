namespace Laydown.Shop.Run;

/// <summary>One file of a run folder.</summary>
/// <param name="Name">File name, without folder.</param>
/// <param name="What">What it is: <c>contone</c>, <c>preview</c>, <c>lit-preview</c>, <c>back-preview</c>, <c>cut</c>, <c>layout</c>, <c>set-up</c>, <c>run</c>.</param>
/// <param name="Bytes">Length.</param>
/// <param name="Sha256">SHA-256, lower-case hex.</param>
public sealed record ManifestEntry(string Name, string What, long Bytes, string Sha256);
