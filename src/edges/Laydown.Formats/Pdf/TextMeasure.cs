using Laydown.Artwork.Pages;
using Laydown.Measures;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;

namespace Laydown.Formats.Pdf;

/// <summary>Finds the smallest texts of a page.</summary>
internal static class TextMeasure
{
    private const int MostSizes = 20;
    private const int SampleLength = 24;

    /// <summary>One sample of each size, smallest first; sizes are told apart to 0.1 pt.</summary>
    /// <param name="letters">The letters of the page, in its own units, from the corner of what is seen of it.</param>
    /// <param name="userUnit">UserUnit of the page.</param>
    /// <param name="seenCorner">Where that corner lies on the media, mm.</param>
    public static IReadOnlyList<TextUse> Smallest(IReadOnlyList<Letter> letters, double userUnit, PointMm seenCorner)
    {
        var samples = new SortedDictionary<double, (List<Letter> Letters, bool Open)>();
        double last = double.NaN;
        foreach (var letter in letters)
        {
            // Invisible text lies over scanned pictures so that it can be searched; it is not printed.
            if (letter.RenderingMode is TextRenderingMode.Neither or TextRenderingMode.NeitherClip || !(letter.PointSize > 0))
                continue;

            double size = Math.Round(letter.PointSize * userUnit, 1);
            if (!samples.TryGetValue(size, out var sample))
                samples[size] = sample = ([], true);
            else if (size != last && sample.Letters.Count > 0)
                samples[size] = sample = (sample.Letters, false);
            if (sample.Open && sample.Letters.Count < SampleLength)
                sample.Letters.Add(letter);
            last = size;
        }

        return [.. samples.Where(s => s.Value.Letters.Any(l => !string.IsNullOrWhiteSpace(l.Value)))
            .Take(MostSizes).Select(s => Use(s.Value.Letters, userUnit, seenCorner))];
    }

    private static TextUse Use(List<Letter> letters, double userUnit, PointMm corner)
    {
        double mm = userUnit * 25.4 / 72;
        double left = letters.SelectMany(Corners).Min(p => p.X), bottom = letters.SelectMany(Corners).Min(p => p.Y);
        double right = letters.SelectMany(Corners).Max(p => p.X), top = letters.SelectMany(Corners).Max(p => p.Y);
        var place = new RectMm(corner.XMm + (left * mm), corner.YMm + (bottom * mm), (right - left) * mm, (top - bottom) * mm);
        return new TextUse(letters[0].PointSize * userUnit, string.Concat(letters.Select(l => l.Value)).Trim(), place);
    }

    private static PdfPoint[] Corners(Letter letter)
    {
        var box = letter.BoundingBox;
        return [box.BottomLeft, box.BottomRight, box.TopLeft, box.TopRight];
    }
}
