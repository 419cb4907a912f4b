using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Shop.Artwork;

/// <summary>Plates that can be read while they are still being made: 16 bits, 0 = no ink, 65535 = full.</summary>
/// <remarks>
/// A read waits until its row is there; rows come from the top, so a reader who goes down the page runs beside the renderer. What was read is final only
/// once <see cref="Ended"/> has told no fault: some damage shows only at the end of a page.
/// </remarks>
/// <param name="names">Plates in the order of the source's planes: always <c>Cyan</c>, <c>Magenta</c>, <c>Yellow</c>, <c>Black</c> first, then named separations, last <c>Alpha</c> (full = opaque) where the file has alpha.</param>
/// <param name="source">The plates. Reads may come from several threads; after a fault each of them throws <see cref="InvalidDataException"/> with the fault's words, after a cancellation <see cref="OperationCanceledException"/>.</param>
/// <param name="ended">How the rendering ended: no fault where all is well; cancelled where it was cancelled.</param>
/// <param name="close">Ends the rendering and removes its files.</param>
/// <exception cref="ArgumentException">There is not one name for each plane.</exception>
public sealed class OpenPlates(IReadOnlyList<string> names, ITileSource source, Task<IReadOnlyList<InputFault>> ended, Func<ValueTask> close) : IAsyncDisposable
{
    /// <summary>Names of the plates, one for each plane.</summary>
    public IReadOnlyList<string> Names { get; } = names.Count == source.Inks
        ? names
        : throw new ArgumentException(Invariant($"Names: found {names.Count}; wanted one for each of {source.Inks} planes."), nameof(names));

    /// <summary>The plates, plane after plane.</summary>
    public ITileSource Source => source;

    /// <summary>Pixels across.</summary>
    public int Columns => source.Columns;

    /// <summary>Pixels down.</summary>
    public int Rows => source.Rows;

    /// <summary>How the rendering ended.</summary>
    public Task<IReadOnlyList<InputFault>> Ended => ended;

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => close();
}
