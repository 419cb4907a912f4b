using System.Globalization;
using System.Text;
using Laydown.Demo.Art;
using SkiaSharp;

namespace Laydown.Demo.Files;

/// <summary>Pictures as SVG: text as outlines, so that no font is needed. Soft light is not for this format.</summary>
internal static class SvgFiles
{
    /// <summary>Writes the picture with its bleed, in mm.</summary>
    public static void Write(string path, Picture picture, string title) => DemoFiles.Write(path, stream =>
    {
        double b = picture.BleedMm;
        StringBuilder svg = new();
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{N(picture.WidthMm + (2 * b))}mm\" height=\"{N(picture.HeightMm + (2 * b))}mm\" viewBox=\"{N(-b)} {N(-b)} {N(picture.WidthMm + (2 * b))} {N(picture.HeightMm + (2 * b))}\">\n");
        svg.Append(CultureInfo.InvariantCulture, $"<title>{System.Security.SecurityElement.Escape(title)}</title>\n");
        foreach ((int i, Element element) in picture.Elements.Index())
        {
            switch (element)
            {
                case Element.Shape shape:
                    Append(svg, i, shape.Outline, shape.Paint, shape.Opacity);
                    break;
                case Element.Text text:
                    Append(svg, i, Art.Type.Outlines(text), text.Colour, 1);
                    break;
                default:
                    throw new InvalidOperationException("SVG takes outlines and text alone.");
            }
        }

        stream.Write(Encoding.UTF8.GetBytes(svg.Append("</svg>\n").ToString()));
    });

    private static void Append(StringBuilder svg, int index, Outline outline, Paint paint, double opacity)
    {
        string fill = Hex(paint.Stops[0].Colour);
        if (!paint.IsPlain)
        {
            fill = Invariant($"url(#g{index})");
            svg.Append(CultureInfo.InvariantCulture, $"<linearGradient id=\"g{index}\" gradientUnits=\"userSpaceOnUse\" x1=\"{N(paint.X0)}\" y1=\"{N(paint.Y0)}\" x2=\"{N(paint.X1)}\" y2=\"{N(paint.Y1)}\">");
            foreach ((double at, SKColor colour) in paint.Stops)
                svg.Append(CultureInfo.InvariantCulture, $"<stop offset=\"{N(at)}\" stop-color=\"{Hex(colour)}\"/>");
            svg.Append("</linearGradient>\n");
        }

        svg.Append(CultureInfo.InvariantCulture, $"<path fill=\"{fill}\"{(opacity < 1 ? Invariant($" fill-opacity=\"{N(opacity)}\"") : "")} d=\"");
        foreach ((char verb, double[] at) in outline.Steps)
            svg.Append(verb).Append(string.Join(' ', at.Select(N)));
        svg.Append("\"/>\n");
    }

    private static string Hex(SKColor c) => c == Paint.Ink ? "#000000" : Invariant($"#{c.Red:x2}{c.Green:x2}{c.Blue:x2}");

    private static string N(double value) => Math.Round(value, 5).ToString("0.#####", CultureInfo.InvariantCulture);
}
