using SkiaSharp;

namespace Laydown.Demo.Art;

/// <summary>The few colours that all pictures of the observatory share.</summary>
internal static class Palette
{
    public static SKColor Cream { get; } = new(0xF6, 0xEE, 0xDC);

    public static SKColor Sand { get; } = new(0xE9, 0xD3, 0xA6);

    public static SKColor Dune { get; } = new(0xE3, 0xAC, 0x61);

    public static SKColor Samphire { get; } = new(0xB2, 0x52, 0x36);

    public static SKColor Reed { get; } = new(0x8A, 0x82, 0x45);

    public static SKColor Marsh { get; } = new(0x7F, 0x92, 0x68);

    public static SKColor Estuary { get; } = new(0x2E, 0x74, 0x7D);

    public static SKColor Deep { get; } = new(0x14, 0x3C, 0x49);

    public static SKColor Night { get; } = new(0x0B, 0x17, 0x29);

    public static SKColor Water { get; } = new(0xCF, 0xE1, 0xDF);

    public static SKColor Slate { get; } = new(0x16, 0x1D, 0x22);

    public static SKColor Bill { get; } = new(0xD8, 0x50, 0x2B);

    public static SKColor Lamp { get; } = new(0xFF, 0xD8, 0x8A);

    public static SKColor Star { get; } = new(0xFF, 0xF7, 0xE2);

    /// <summary>A colour between two.</summary>
    public static SKColor Mix(SKColor one, SKColor other, double share) => new(
        (byte)Math.Round(one.Red + ((other.Red - one.Red) * share)),
        (byte)Math.Round(one.Green + ((other.Green - one.Green) * share)),
        (byte)Math.Round(one.Blue + ((other.Blue - one.Blue) * share)));
}
