using Laydown.Artwork.Pages;
using Laydown.Layout.Panels;
using Laydown.Measures;
using Laydown.Plan.Orders;

namespace Laydown.Shop.Layout;

/// <summary>What seams between panels should stay out of: what the order says, and text and codes that were found in the artwork.</summary>
internal static class SeamCosts
{
    /// <summary>Cost of each millimetre of a seam that runs through text: own choice; a code costs more, as it can no longer be read.</summary>
    private const int TextPerMm = 200, CodePerMm = 5000;

    /// <summary>The places, mm from the lower left corner of the finished piece.</summary>
    /// <param name="item">The item.</param>
    /// <param name="pages">Pages that are its pictures.</param>
    public static IReadOnlyList<SeamKeepOut> Of(Item item, IReadOnlyList<ArtworkPage> pages)
    {
        List<SeamKeepOut> places = [.. item.SeamKeepOuts ?? []];
        foreach (ArtworkPage page in pages)
        {
            foreach (RectMm text in page.TextPlaces.Concat(page.SmallestTexts.Select(t => t.Place)))
                places.Add(new(OnPiece(text, page, item), TextPerMm, What: "text"));
            foreach (CodeUse code in page.Codes)
                places.Add(new(OnPiece(code.Place, page, item), CodePerMm, What: code.Symbology));
        }

        return places;
    }

    // The page's trim box becomes the finished piece, each axis by itself.
    private static RectMm OnPiece(RectMm place, ArtworkPage page, Item item)
    {
        RectMm trim = page.TrimMm;
        double across = trim.WidthMm > 0 ? item.WidthMm / trim.WidthMm : 1, up = trim.HeightMm > 0 ? item.HeightMm / trim.HeightMm : 1;
        return new((place.XMm - trim.XMm) * across, (place.YMm - trim.YMm) * up, place.WidthMm * across, place.HeightMm * up);
    }
}
