using Laydown.Artwork.Pages;
using Laydown.Measures;

namespace Laydown.Formats.Pdf;

/// <summary>Keeps the thinnest lines of many, thinnest first; of lines alike the first that came.</summary>
internal sealed class ThinnestLines
{
    private const int Most = 20;
    private readonly List<LineUse> lines = [];

    /// <summary>The lines kept.</summary>
    public IReadOnlyList<LineUse> Kept => lines;

    /// <summary>Looks at one more line.</summary>
    /// <param name="widthMm">Its width, mm.</param>
    /// <param name="place">Where it is; asked only when it is kept.</param>
    public void Add(double widthMm, Func<RectMm> place)
    {
        if (lines.Count == Most && widthMm >= lines[^1].WidthMm)
            return;

        int at = lines.FindIndex(l => l.WidthMm > widthMm);
        lines.Insert(at < 0 ? lines.Count : at, new LineUse(widthMm, place()));
        if (lines.Count > Most)
            lines.RemoveAt(Most);
    }
}
