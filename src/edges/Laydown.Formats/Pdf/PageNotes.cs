using Laydown.Artwork.Pages;

namespace Laydown.Formats.Pdf;

/// <summary>What the walk over a page gathers.</summary>
internal sealed class PageNotes
{
    private const int MostImages = 2000;
    private const int MostCuts = 5000;
    private readonly SortedSet<string> spaces = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, (string? Step, bool? Overprints)> spots = new(StringComparer.Ordinal);
    private readonly SortedSet<string> hidden = new(StringComparer.Ordinal);
    private readonly List<PlacedImage> images = [];
    private readonly List<CutPath> cuts = [];

    public IReadOnlyList<string> ColourSpaces => [.. spaces];

    public IReadOnlyList<string> HiddenLayers => [.. hidden];

    public IReadOnlyList<PlacedImage> Images => images;

    public ThinnestLines Lines { get; } = new();

    public IReadOnlyList<CutPath> CutPaths => cuts;

    public bool Transparency { get; set; }

    public bool Overprint { get; set; }

    public IReadOnlyList<NamedSeparation> Separations =>
        [.. spots.Select(s => new NamedSeparation(s.Key, SeparationRoles.Of(s.Key, s.Value.Step), s.Value.Step, s.Value.Overprints))];

    /// <summary>A colour painted with.</summary>
    public void Painted(ColourSpace space, string? step, bool overprints)
    {
        spaces.Add(space.Label);
        foreach (string spot in space.Spots)
        {
            var known = spots.GetValueOrDefault(spot);
            spots[spot] = (known.Step ?? step, (known.Overprints ?? false) || overprints);
        }
    }

    /// <summary>A separation that stands in the resources, used or not.</summary>
    public void Named(IEnumerable<string> names)
    {
        foreach (string name in names)
            spots.TryAdd(name, (null, null));
    }

    /// <summary>A layer that is used.</summary>
    public void Uses(Layer layer)
    {
        if (layer.Hidden)
            hidden.Add(layer.Name);
    }

    public void Image(PlacedImage image)
    {
        spaces.Add(image.ColourSpace);
        if (images.Count < MostImages)
            images.Add(image);
    }

    public void Cut(SubPath part, string step)
    {
        var (points, closed) = part.Outline();
        if (cuts.Count < MostCuts && points.Count >= 2)
            cuts.Add(new CutPath(points, closed, step));
    }
}
