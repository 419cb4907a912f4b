using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;

namespace Laydown.Optics.Looks;

/// <summary>The look of a stack in a scene: coverages of a spot → what the viewer sees, and rows of pixels for previews.</summary>
/// <remarks>
/// How to make a preview: build one <see cref="LookLayer"/> for each printed layer in print order — colours by
/// <see cref="LookInk.Colour"/> with the
/// generic spectrum at the ink's solid density and the layer's strength, whites by <see cref="LookInk.White(double, double)"/> —, the
/// sheet by
/// <see cref="LookSheet"/>, the scene by <see cref="Scene.Day"/> or <see cref="Scene.Lit"/>; then call <see cref="Row"/> for every
/// row. Pictures of all
/// layers must lie as the viewer sees them: take mirroring out first. One look may serve several threads at once.
/// By day the eye is adapted to a perfect diffuser in the room's light; with the lamp on, to the lit piece without colour.
/// </remarks>
public sealed class StackLook
{
    private readonly StackOptics optics;
    private readonly SpectralWeights roomWeights, lampWeights;
    private readonly double roomScale, lampScale;
    private readonly LookRow row;

    /// <summary>The look of a stack in a scene.</summary>
    /// <param name="sheet">The bare sheet.</param>
    /// <param name="layers">Layers in print order.</param>
    /// <param name="scene">The light.</param>
    /// <param name="viewedFrom">The face toward the viewer.</param>
    /// <param name="yuleNielsen">Factor n of the films, 1 to endless; see <see cref="StackOptics"/>.</param>
    public StackLook(
        LookSheet sheet, IReadOnlyList<LookLayer> layers, Scene scene, LookFace viewedFrom = LookFace.First, double yuleNielsen = 1)
    {
        Scene = scene;
        optics = new(sheet, layers, scene.Backing, viewedFrom, yuleNielsen);
        (roomWeights, lampWeights) = (SpectralWeights.For(scene.Room), SpectralWeights.For(scene.Lamp));
        (roomScale, lampScale) = (scene.RoomLux / Math.PI / 100, scene.LampCdPerM2 / 100);
        AdoptedWhite = Adopt();
        row = new(optics, roomWeights, roomScale, lampWeights, lampScale, AdoptedWhite);
    }

    /// <summary>The light the piece is seen in.</summary>
    public Scene Scene { get; }

    /// <summary>The white the eye is adapted to, absolute: Y in cd/m².</summary>
    public Xyz AdoptedWhite { get; }

    /// <summary>Number of coverages of a spot: all inks of all layers.</summary>
    public int InkCount => optics.InkCount;

    /// <summary>What is seen at a spot.</summary>
    /// <param name="coverages">Layer after layer in print order, the inks of each layer in their order, 0 to 1.</param>
    /// <exception cref="ArgumentException">Another number of coverages.</exception>
    public SeenColour At(ReadOnlySpan<double> coverages)
    {
        Xyz light = Light(coverages);
        Xyz relative = light.Times(100 / AdoptedWhite.Y);
        Xyz white = AdoptedWhite.Times(100 / AdoptedWhite.Y);
        (byte red, byte green, byte blue) = Srgb.Encode(Bradford.Adapt(relative, white, WhitePoints.Srgb));
        return new(light, Lab.From(Bradford.Adapt(relative, white, WhitePoints.Pcs), WhitePoints.Pcs), red, green, blue);
    }

    /// <summary>What is seen along a row of pixels, as sRGB; about a million pixels a second on one core.</summary>
    /// <param name="coverages">Planes of the row: for each layer in print order, for each ink of that layer, <paramref name="width"/>
    /// bytes, 255 = full laydown.</param>
    /// <param name="width">Pixels, at least 1.</param>
    /// <param name="rgb">Receives 3 × width bytes: red, green, blue.</param>
    /// <exception cref="ArgumentException">A span has another length than inks × width or 3 × width.</exception>
    public void Row(ReadOnlySpan<byte> coverages, int width, Span<byte> rgb)
    {
        if (width < 1 || coverages.Length != InkCount * width || rgb.Length != 3 * width)
            throw new ArgumentException(
                Invariant($"{coverages.Length} coverages, {rgb.Length} bytes out for {width} pixels: wanted {InkCount} and 3 for each."), nameof(coverages));
        row.Run(coverages, width, rgb);
    }

    private Xyz Light(ReadOnlySpan<double> coverages)
    {
        Span<double> reflectance = stackalloc double[Bands.Count], transmittance = stackalloc double[Bands.Count];
        optics.Solve(coverages, reflectance, transmittance);
        return roomWeights.Of(reflectance).Times(roomScale).Plus(lampWeights.Of(transmittance).Times(lampScale));
    }

    private Xyz Adopt()
    {
        Xyz diffuser = roomWeights.White.Times(roomScale);
        if (Scene.LampCdPerM2 == 0)
            return diffuser;

        double[] uncoloured = [.. optics.Layers.SelectMany(l => l.Inks).Select(i => i.IsWhite ? 1.0 : 0.0)];
        Xyz lit = Light(uncoloured);

        // A piece that lets nothing through and a dark room leave nothing to adapt to: take the lamp itself.
        return lit.Y > 1e-6 * Scene.LampCdPerM2 ? lit : lampWeights.White.Times(lampScale);
    }
}
