using SkiaSharp;

namespace Laydown.Demo.Art;

/// <summary>What an outline is filled with: one colour, or colours that change along a line.</summary>
/// <param name="Stops">Colours with their places from 0 to 1; one stop for a plain colour.</param>
/// <param name="X0">Start of the line, mm.</param>
/// <param name="Y0">Start of the line, mm.</param>
/// <param name="X1">End of the line, mm.</param>
/// <param name="Y1">End of the line, mm.</param>
internal sealed record Paint(IReadOnlyList<(double At, SKColor Colour)> Stops, double X0, double Y0, double X1, double Y1)
{
    public bool IsPlain => Stops.Count == 1;

    /// <summary>Pure black ink, for text and codes.</summary>
    public static SKColor Ink { get; } = new(0x11, 0x14, 0x17);

    public static implicit operator Paint(SKColor colour) => new([(0, colour)], 0, 0, 0, 0);

    /// <summary>Colours from top to bottom, at even places.</summary>
    public static Paint Down(double top, double bottom, params SKColor[] colours) =>
        new([.. colours.Select((c, i) => (i / (double)(colours.Length - 1), c))], 0, top, 0, bottom);

    public static Paint Line(double x0, double y0, double x1, double y1, params SKColor[] colours) =>
        Down(0, 1, colours) with { X0 = x0, Y0 = y0, X1 = x1, Y1 = y1 };
}
