using Laydown.Artwork.Pages;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;

namespace Laydown.Output.PressFiles;

/// <summary>Brings a place of an item's page to its place on the sheet, as the sheet lies with its first printed face up.</summary>
/// <param name="item">The item.</param>
/// <param name="placement">Where it lies.</param>
/// <param name="mirrored">Whether it is printed mirrored on that face.</param>
internal sealed class CutMapping(Item item, Placement placement, bool mirrored)
{
    private readonly PictureOnSheet onSheet = new(placement, item.Printed, mirrored);

    /// <summary>Shown part of the printed picture, mm from the picture's lower left corner.</summary>
    public RectMm Part => onSheet.Part;

    /// <summary>The finished piece, or the part of it this panel shows, mm of the printed picture; null where the panel shows bleed alone.</summary>
    public RectMm? Trim()
    {
        double left = Math.Max(item.BleedMm, Part.XMm), right = Math.Min(item.BleedMm + item.WidthMm, Part.RightMm);
        double bottom = Math.Max(item.BleedMm, Part.YMm), top = Math.Min(item.BleedMm + item.HeightMm, Part.TopMm);
        return right > left && top > bottom ? new(left, bottom, right - left, top - bottom) : null;
    }

    /// <summary>A point of the page, in mm of the printed picture: the page's trim box becomes the finished piece.</summary>
    public PointMm ToPicture(PointMm onPage, ArtworkPage page)
    {
        double across = page.TrimMm.WidthMm > 0 ? item.WidthMm / page.TrimMm.WidthMm : 1;
        double up = page.TrimMm.HeightMm > 0 ? item.HeightMm / page.TrimMm.HeightMm : 1;
        return new(item.BleedMm + ((onPage.XMm - page.TrimMm.XMm) * across), item.BleedMm + ((onPage.YMm - page.TrimMm.YMm) * up));
    }

    /// <summary>A point of the printed picture, in mm of the sheet.</summary>
    public PointMm ToSheet(PointMm inPicture) => onSheet.Of(inPicture);

    /// <summary>The corners of a rectangle of the printed picture, in mm of the sheet.</summary>
    public IReadOnlyList<PointMm> ToSheet(RectMm r) =>
        [.. new PointMm[] { new(r.XMm, r.YMm), new(r.RightMm, r.YMm), new(r.RightMm, r.TopMm), new(r.XMm, r.TopMm) }.Select(ToSheet)];
}
