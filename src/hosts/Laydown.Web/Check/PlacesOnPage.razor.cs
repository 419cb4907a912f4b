using Laydown.Artwork.Pages;
using Laydown.Measures;
using Laydown.Web.Design;
using Microsoft.AspNetCore.Components;

namespace Laydown.Web.Check;

/// <summary>An artwork page with the places of findings drawn on it, each with its number.</summary>
public sealed partial class PlacesOnPage
{
    private const double LongSidePx = 1000;
    private double width = 1;
    private double height = 1;
    private double drawnWidth;
    private double drawnHeight;
    private double radius;
    private string label = "";

    /// <summary>Address of the page's picture.</summary>
    [Parameter, EditorRequired]
    public string Picture { get; set; } = "";

    /// <summary>The page as measured.</summary>
    [Parameter, EditorRequired]
    public ArtworkPage Page { get; set; } = null!;

    /// <summary>What is shown, for those who do not see it.</summary>
    [Parameter, EditorRequired]
    public string Title { get; set; } = "";

    /// <summary>Findings on this page.</summary>
    [Parameter, EditorRequired]
    public IReadOnlyList<PlacedFinding> Places { get; set; } = [];

    /// <summary>Number of the finding that is picked out, or null.</summary>
    [Parameter]
    public int? Chosen { get; set; }

    /// <summary>Called with the number of a place that was pressed.</summary>
    [Parameter]
    public EventCallback<int> OnChoose { get; set; }

    /// <inheritdoc/>
    protected override void OnParametersSet()
    {
        width = Math.Max(Page.MediaMm.WidthMm, 0.1);
        height = Math.Max(Page.MediaMm.HeightMm, 0.1);
        double longSide = Math.Max(width, height);
        drawnWidth = LongSidePx * width / longSide;
        drawnHeight = LongSidePx * height / longSide;
        radius = longSide / 45;
        string places = Places.Count == 0 ? "no place is marked" : Invariant($"{Say.Count(Places.Count, "place is", "places are")} marked");
        label = Invariant($"{Title}; {places}");
    }

    private static string X(double xMm) => Say.Plain(xMm);

    // Pages count upward from the lower left corner, pictures downward from the upper left.
    private string Y(double topMm) => Say.Plain(height - topMm);

    // A place too small to see is drawn a little larger around its middle, and none leaves the page.
    private RectMm Seen(RectMm place)
    {
        double least = Math.Max(width, height) / 60;
        double wider = Math.Max(0, (least - place.WidthMm) / 2);
        double higher = Math.Max(0, (least - place.HeightMm) / 2);
        double left = Math.Clamp(place.XMm - wider, 0, width);
        double low = Math.Clamp(place.YMm - higher, 0, height);
        double right = Math.Clamp(place.RightMm + wider, left, width);
        double top = Math.Clamp(place.TopMm + higher, low, height);
        return new(left, low, right - left, top - low);
    }

    private PointMm Badge(RectMm seen) => new(
        Math.Clamp(seen.XMm, radius * 1.1, Math.Max(radius * 1.1, width - (radius * 1.1))),
        Math.Clamp(height - seen.TopMm, radius * 1.1, Math.Max(radius * 1.1, height - (radius * 1.1))));
}
