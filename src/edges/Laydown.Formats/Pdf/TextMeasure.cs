using Laydown.Artwork.Pages;
using Laydown.Measures;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;

namespace Laydown.Formats.Pdf;

/// <summary>Finds the texts of a page: the smallest, and where text stands.</summary>
internal static class TextMeasure
{
    private const int MostSizes = 20;
    private const int SampleLength = 24;
    private const int MostPlaces = 500;

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

    /// <summary>Where text stands, word by word; where that makes more than <see cref="MostPlaces"/>, line by line, and then the first of them.</summary>
    /// <param name="letters">The letters of the page.</param>
    /// <param name="userUnit">UserUnit of the page.</param>
    /// <param name="seenCorner">Where the corner of what is seen lies on the media, mm.</param>
    public static IReadOnlyList<RectMm> Places(IReadOnlyList<Letter> letters, double userUnit, PointMm seenCorner)
    {
        // From one word to the next it is a quarter of the size, within a word next to nothing; the next line is further than a size away.
        List<List<Letter>> places = Joined(letters, 0.15);
        if (places.Count > MostPlaces)
            places = Joined(letters, 0.8);
        return [.. places.Take(MostPlaces).Select(l => Place(l, userUnit, seenCorner))];
    }

    private static List<List<Letter>> Joined(IReadOnlyList<Letter> letters, double stepPerSize)
    {
        List<List<Letter>> places = [];
        foreach (Letter letter in letters)
        {
            if (letter.RenderingMode is TextRenderingMode.Neither or TextRenderingMode.NeitherClip || !(letter.PointSize > 0) || string.IsNullOrWhiteSpace(letter.Value))
                continue;
            if (places.Count > 0 && Follows(places[^1][^1], letter, stepPerSize))
                places[^1].Add(letter);
            else
                places.Add([letter]);
        }

        return places;
    }

    private static bool Follows(Letter last, Letter next, double stepPerSize)
    {
        double across = next.StartBaseLine.X - last.EndBaseLine.X, up = next.StartBaseLine.Y - last.EndBaseLine.Y;
        return Math.Abs(last.PointSize - next.PointSize) < 0.05 && Math.Sqrt((across * across) + (up * up)) < stepPerSize * last.PointSize;
    }

    private static TextUse Use(List<Letter> letters, double userUnit, PointMm corner)
    {
        return new TextUse(letters[0].PointSize * userUnit, string.Concat(letters.Select(l => l.Value)).Trim(), Place(letters, userUnit, corner));
    }

    private static RectMm Place(List<Letter> letters, double userUnit, PointMm corner)
    {
        double mm = userUnit * 25.4 / 72;
        double left = letters.SelectMany(Corners).Min(p => p.X), bottom = letters.SelectMany(Corners).Min(p => p.Y);
        double right = letters.SelectMany(Corners).Max(p => p.X), top = letters.SelectMany(Corners).Max(p => p.Y);
        return new RectMm(corner.XMm + (left * mm), corner.YMm + (bottom * mm), (right - left) * mm, (top - bottom) * mm);
    }

    private static PdfPoint[] Corners(Letter letter)
    {
        var box = letter.BoundingBox;
        return [box.BottomLeft, box.BottomRight, box.TopLeft, box.TopRight];
    }
}
