using Laydown.Artwork.Pages;
using Laydown.Measures;

namespace Laydown.Shop.Artwork;

/// <summary>Measures customers' files, taken as hostile: limits, time-outs, child processes. Never changes them.</summary>
public interface IArtworkReader
{
    /// <summary>The file at <paramref name="path"/> as measured, or why it cannot be taken (empty, cut short, mislabelled, locked, too large, no Ghostscript).</summary>
    Task<Reading<ArtworkFile>> ReadAsync(string path, CancellationToken cancellation);
}
