namespace Laydown.Artwork.Pages;

/// <summary>A file that came, measured. The file itself is never changed.</summary>
/// <param name="Name">File name without folder.</param>
/// <param name="Kind">Format, told from its first bytes, not its name.</param>
/// <param name="Bytes">Length, bytes.</param>
/// <param name="Sha256">SHA-256 of the file, lower-case hex.</param>
/// <param name="Version">Version of the format where it has one, such as PDF <c>1.6</c>.</param>
/// <param name="OutputIntent">Output condition the file names, or null.</param>
/// <param name="Pages">Its pages or images; at least one.</param>
public sealed record ArtworkFile(
    string Name, ArtworkKind Kind, long Bytes, string Sha256, string? Version, string? OutputIntent, IReadOnlyList<ArtworkPage> Pages);
