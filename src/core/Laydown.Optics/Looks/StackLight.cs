using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;

namespace Laydown.Optics.Looks;

/// <summary>The light of a stack apart by where it comes from: what a room light of one and a lamp of one give at each pixel.</summary>
/// <remarks>
/// Light adds up: seen = room·D + lamp·N, with room in cd/m² of a perfect diffuser (lux ÷ π) and lamp in cd/m² of the bare lamp. D and N are linear light in the
/// primaries of sRGB [IEC61966-2-1], both carried over from the room's white to that of sRGB by one and the same Bradford step, not clipped: colours outside the
/// screen have channels under 0. The perfect diffuser in the room is 1, 1, 1. One object may serve several threads at once.
/// </remarks>
public sealed class StackLight
{
    private readonly LookRow row;

    /// <summary>A stack in a room and before a lamp, both of luminance one.</summary>
    /// <param name="sheet">The bare sheet.</param>
    /// <param name="layers">Layers in print order.</param>
    /// <param name="room">Spectrum of the room light.</param>
    /// <param name="lamp">Spectrum of the lamp.</param>
    /// <param name="backing">Reflectance of what stands behind the piece, 0 to 0.99.</param>
    /// <param name="viewedFrom">The face toward the viewer.</param>
    public StackLight(LookSheet sheet, IReadOnlyList<LookLayer> layers, Illuminant room, Illuminant lamp, double backing, LookFace viewedFrom = LookFace.First)
    {
        StackOptics optics = new(sheet, layers, backing, viewedFrom);
        SpectralWeights roomWeights = SpectralWeights.For(room), lampWeights = SpectralWeights.For(lamp);
        Xyz white = roomWeights.White;
        row = new(optics, roomWeights, 0.01, lampWeights, 0.01, white.Times(1 / white.Y));
        InkCount = optics.InkCount;
        LampWhite = Primaries(lampWeights.White, white);
        Uncoloured = [.. layers.SelectMany(l => l.Inks).Select(i => (byte)(i.IsWhite ? 255 : 0))];
    }

    /// <summary>Number of coverages of a spot: all inks of all layers.</summary>
    public int InkCount { get; }

    /// <summary>The bare lamp at luminance one, linear, in the same primaries.</summary>
    public IReadOnlyList<double> LampWhite { get; }

    /// <summary>Coverages of the piece without colour, whites at full laydown: what the eye adapts to when the lamp is on.</summary>
    public IReadOnlyList<byte> Uncoloured { get; }

    /// <summary>Light along a row of pixels.</summary>
    /// <param name="coverages">Ink after ink in print order, <paramref name="width"/> bytes each, 255 = full laydown.</param>
    /// <param name="width">Pixels, at least 1.</param>
    /// <param name="room">Receives D: 3 × width values, red, green, blue of each pixel.</param>
    /// <param name="lamp">Receives N, laid out alike.</param>
    /// <exception cref="ArgumentException">A span has another length than inks × width or 3 × width.</exception>
    public void Row(ReadOnlySpan<byte> coverages, int width, Span<float> room, Span<float> lamp)
    {
        if (width < 1 || coverages.Length != InkCount * width || room.Length != 3 * width || lamp.Length != 3 * width)
            throw new ArgumentException(
                Invariant($"{coverages.Length} coverages, {room.Length} and {lamp.Length} values for {width} pixels: wanted {InkCount}, 3 and 3 for each."), nameof(coverages));
        Span<byte> spot = stackalloc byte[InkCount], last = stackalloc byte[InkCount];
        for (int x = 0; x < width; x++)
        {
            for (int ink = 0; ink < spot.Length; ink++)
                spot[ink] = coverages[(ink * width) + x];
            int at = 3 * x;

            // Neighbours are often equal: then so is their light.
            if (x > 0 && spot.SequenceEqual(last))
            {
                room.Slice(at - 3, 3).CopyTo(room[at..]);
                lamp.Slice(at - 3, 3).CopyTo(lamp[at..]);
                continue;
            }

            row.Apart(spot, room.Slice(at, 3), lamp.Slice(at, 3));
            spot.CopyTo(last);
        }
    }

    private static double[] Primaries(Xyz light, Xyz white)
    {
        (double red, double green, double blue) = Srgb.Linear(Bradford.Adapt(light, white, WhitePoints.Srgb));
        return [red, green, blue];
    }
}
