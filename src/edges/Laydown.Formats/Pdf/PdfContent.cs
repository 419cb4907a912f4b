using Laydown.Artwork.Pages;

namespace Laydown.Formats.Pdf;

/// <summary>A PDF as measured from its objects, before anything is rendered.</summary>
/// <param name="Version">Version, such as <c>1.6</c>.</param>
/// <param name="OutputIntent">Output condition named by its first output intent, or null.</param>
/// <param name="Pages">Its pages; total ink and bar codes are not filled in, as they need a rendered page.</param>
public sealed record PdfContent(string Version, string? OutputIntent, IReadOnlyList<ArtworkPage> Pages);
