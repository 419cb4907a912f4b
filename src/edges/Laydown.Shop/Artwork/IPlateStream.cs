using Laydown.Measures;

namespace Laydown.Shop.Artwork;

/// <summary>Opens the plates of a page or image while they are still being made, so that rendering and what follows run side by side.</summary>
public interface IPlateStream
{
    /// <summary>Begins to render and returns as soon as size and names of the plates are known. The caller disposes the result, which ends the rendering and removes its files.</summary>
    /// <param name="request">What to render.</param>
    /// <param name="cancellation">Ends the rendering at any time, also after this method has returned.</param>
    /// <returns>The plates, or why there are none. A fault that shows later is told by <see cref="OpenPlates.Ended"/> and by every read.</returns>
    Task<Reading<OpenPlates>> OpenAsync(RenderRequest request, CancellationToken cancellation);
}
