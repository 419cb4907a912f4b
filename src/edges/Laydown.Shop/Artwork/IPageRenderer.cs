using Laydown.Measures;

namespace Laydown.Shop.Artwork;

/// <summary>Turns a page or image into pixels of process plates and named plates.</summary>
public interface IPageRenderer
{
    /// <summary>Plates of a page at a target size. The caller disposes the result, which removes its temporary files.</summary>
    Task<Reading<RenderedPage>> RenderAsync(RenderRequest request, CancellationToken cancellation);

    /// <summary>Writes an sRGB PNG of the whole media box of a page, no side over <paramref name="maxSidePx"/>, to <paramref name="pngPath"/>: whole or not at all.</summary>
    Task<Reading<SizeMm>> PreviewAsync(string artworkPath, int page, int maxSidePx, string pngPath, CancellationToken cancellation);
}
