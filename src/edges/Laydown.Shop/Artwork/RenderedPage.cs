namespace Laydown.Shop.Artwork;

/// <summary>Plates of a page: one byte a pixel, 0 = no ink, 255 = full; kept in one raw file, plate after plate, row after row from the top.</summary>
/// <param name="Width">Pixels across.</param>
/// <param name="Height">Pixels down.</param>
/// <param name="Plates">Names in file order: always <c>Cyan</c>, <c>Magenta</c>, <c>Yellow</c>, <c>Black</c> first, then named separations, last <c>Alpha</c> (255 = opaque) where the file has alpha.</param>
/// <param name="RawPath">The raw file: <c>Plates.Count × Height × Width</c> bytes.</param>
public sealed record RenderedPage(int Width, int Height, IReadOnlyList<string> Plates, string RawPath) : IDisposable
{
    /// <summary>Removes the raw file.</summary>
    public void Dispose()
    {
        if (File.Exists(RawPath))
            File.Delete(RawPath);
    }
}
