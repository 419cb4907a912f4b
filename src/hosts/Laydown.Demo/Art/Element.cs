using SkiaSharp;

namespace Laydown.Demo.Art;

/// <summary>Something that a picture shows.</summary>
internal abstract record Element
{
    /// <summary>A filled outline.</summary>
    public sealed record Shape(Outline Outline, Paint Paint, double Opacity) : Element;

    /// <summary>A line of text; <paramref name="X"/> and <paramref name="Y"/> are the start of its base line.</summary>
    public sealed record Text(string Words, Face Face, double SizeMm, double X, double Y, SKColor Colour, double Tracking) : Element;

    /// <summary>Something soft (light, haze) that only pixels can show, drawn in mm over a rectangle.</summary>
    public sealed record Soft(double X, double Y, double Width, double Height, double Ppi, Action<SKCanvas> Draw) : Element;
}
