using Laydown.Measures;

namespace Laydown.Shop.Layers;

/// <summary>Reads the two pictures of a panel from customers' files, taken as hostile, onto the pixels of the piece.</summary>
public interface IPairPictures
{
    /// <summary>
    /// Both pictures in CIELAB (D50), each relative to its own white, on one pixel grid of round(mm × ppi / 25.4) with bleed; or every fault found: no
    /// picture, cut short, too large, of several frames, of another shape than the piece by more than a factor of 2, points that fit no picture.
    /// </summary>
    /// <param name="request">What to read.</param>
    /// <param name="progress">Told the share that is done, 0 to 1.</param>
    /// <param name="cancellation">Stops it within a band of rows; nothing stays in the scratch folder then.</param>
    /// <returns>The pair, which the caller disposes; that removes its files.</returns>
    Task<Reading<PairFile>> ReadAsync(PairRequest request, IProgress<double>? progress, CancellationToken cancellation);
}
