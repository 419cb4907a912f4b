using System.Text.RegularExpressions;
using SkiaSharp;
using Svg.Skia;

namespace Laydown.Output.Documents;

/// <summary>One drawing of a paper: the same SVG text stands in the page and is drawn into the PDF.</summary>
/// <param name="Title">What it shows.</param>
/// <param name="Svg">The SVG text.</param>
internal sealed partial record Drawing(string Title, string Svg)
{
    /// <summary>The drawing as a picture for a PDF, with its text kept as text.</summary>
    /// <remarks>Style sheets are left out: they serve screens with dark pages, and every mark carries its own colours for paper.</remarks>
    internal SKPicture Picture()
    {
        using SKSvg svg = new();
        svg.Settings.TypefaceProviders?.Insert(0, new PageTypefaces());
        svg.FromSvg(StyleSheet().Replace(Svg, ""));
        SKPicture picture = svg.Picture ?? throw new InvalidOperationException(Invariant($"The drawing '{Title}' cannot be drawn."));

        // The picture belongs to the SVG object, so a copy of its marks is kept.
        using SKPictureRecorder recorder = new();
        recorder.BeginRecording(picture.CullRect).DrawPicture(picture);
        return recorder.EndRecording();
    }

    [GeneratedRegex("<style>.*?</style>", RegexOptions.Singleline, matchTimeoutMilliseconds: 2000)]
    private static partial Regex StyleSheet();
}
