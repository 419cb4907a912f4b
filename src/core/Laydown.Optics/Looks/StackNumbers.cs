using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;

namespace Laydown.Optics.Looks;

/// <summary>Numbers of a stack in a scene: opacity, transmission, density, contrast, luminance and how much of the layers behind the
/// white shows by day; for one spot, or as maps over rows of pixels.</summary>
/// <remarks>Day is the scene with its lamp off: the colours of day do not hang on the room's lux, and are told even in a room of 0
/// lx.</remarks>
public sealed class StackNumbers
{
    /// <summary>Reflectance of the white that opacity is read over.</summary>
    public const double OpacityWhite = 0.8;

    private readonly StackOptics optics, overBlack, overWhite;
    private readonly SpectralWeights room, lamp;
    private readonly double roomScale, lampScale, bareTransmission;
    private readonly Xyz uncoloured, uncolouredInDark, eyeWhite;
    private readonly int[] behind;
    private readonly Adaptation adaptation;
    private readonly Lazy<LookRow> row, rowOverBlack, rowOverWhite;

    /// <summary>Numbers of a stack.</summary>
    /// <param name="sheet">The bare sheet.</param>
    /// <param name="layers">Layers in print order.</param>
    /// <param name="scene">The light with the lamp on.</param>
    /// <param name="viewedFrom">The face toward the viewer.</param>
    /// <param name="adaptation">What the eye is adapted to when the lamp is on; none stands for the lit piece.</param>
    /// <param name="backLayers">Places in print order of the layers whose show-through is told; none stands for the colours that lie behind
    /// the first thing that scatters, seen from the viewer.</param>
    /// <exception cref="ArgumentException">A place outside the layers, or an eye adapted to a room without light.</exception>
    public StackNumbers(
        LookSheet sheet,
        IReadOnlyList<LookLayer> layers,
        Scene scene,
        LookFace viewedFrom = LookFace.First,
        Adaptation? adaptation = null,
        IReadOnlyList<int>? backLayers = null)
    {
        (optics, overBlack, overWhite) = (Over(scene.Backing), Over(0), Over(OpacityWhite));
        (room, lamp) = (SpectralWeights.For(scene.Room), SpectralWeights.For(scene.Lamp));
        (roomScale, lampScale) = (scene.RoomLux / Math.PI / 100, scene.LampCdPerM2 / 100);
        BackLayers = [.. backLayers ?? optics.BehindScatter()];
        behind = [.. BackLayers.SelectMany(Inks)];

        // What contrast, relative transmission and the eye compare with.
        double[] bare = new double[optics.InkCount];
        bareTransmission = LampOf(bare).Y / 100;
        double[] white = [.. layers.SelectMany(l => l.Inks).Select(i => i.IsWhite ? 1.0 : 0.0)];
        uncolouredInDark = LampOf(white).Times(lampScale);
        uncoloured = uncolouredInDark.Plus(RoomOf(optics, white).Times(roomScale));
        this.adaptation = adaptation ?? Adaptation.OfLamp;
        eyeWhite = EyeWhite();
        (row, rowOverBlack, rowOverWhite) = (Fast(optics), Fast(overBlack), Fast(overWhite));

        StackOptics Over(double backing) => new(sheet, layers, backing, viewedFrom);
    }

    /// <summary>Number of coverages of a spot: all inks of all layers.</summary>
    public int InkCount => optics.InkCount;

    /// <summary>Places in print order of the layers whose show-through is told.</summary>
    public IReadOnlyList<int> BackLayers { get; }

    /// <summary>The numbers of a spot.</summary>
    /// <param name="coverages">Layer after layer in print order, the inks of each layer in their order, 0 to 1.</param>
    /// <exception cref="ArgumentException">Another number of coverages.</exception>
    public SpotNumbers At(ReadOnlySpan<double> coverages)
    {
        Xyz day = RoomOf(optics, coverages), through = LampOf(coverages);
        Xyz dark = through.Times(lampScale), lit = dark.Plus(day.Times(roomScale));
        double[] without = [.. coverages];
        foreach (int ink in behind)
            without[ink] = 0;
        return new(
            Ratio(RoomOf(overBlack, coverages).Y, RoomOf(overWhite, coverages).Y),
            through.Y,
            100 * Ratio(through.Y / 100, bareTransmission),
            Density(through.Y / 100),
            Density(Ratio(through.Y / 100, bareTransmission)),
            DayLab(day),
            day.Y * roomScale,
            LitLab(lit),
            lit.Y,
            Contrast(uncoloured.Y, lit.Y),
            Contrast(uncolouredInDark.Y, dark.Y),
            Ciede2000.Between(DayLab(day), DayLab(RoomOf(optics, without))),
            Gain(coverages));
    }

    /// <summary>One number along a row of pixels, the fast way: single precision, inks from tables; about a million pixels a second on one
    /// core, half of that for opacity and show-through.</summary>
    /// <param name="map">Which number.</param>
    /// <param name="coverages">Planes of the row: for each layer in print order, for each ink of that layer, <paramref name="width"/>
    /// bytes, 255 = full laydown.</param>
    /// <param name="width">Pixels, at least 1.</param>
    /// <param name="values">Receives <paramref name="width"/> values.</param>
    /// <exception cref="ArgumentException">A span has another length than inks × width or width, or no known map.</exception>
    public void Row(SpotMap map, ReadOnlySpan<byte> coverages, int width, Span<float> values)
    {
        if (width < 1 || coverages.Length != InkCount * width || values.Length != width)
            throw new ArgumentException(
                Invariant($"{coverages.Length} coverages, {values.Length} values for {width} pixels: wanted {InkCount} and 1 for each."),
                nameof(coverages));
        if (!Enum.IsDefined(map))
            throw new ArgumentException(Invariant($"Map: found {(int)map}; wanted one of {nameof(SpotMap)}."), nameof(map));

        Span<byte> spot = stackalloc byte[InkCount], last = stackalloc byte[InkCount];
        for (int x = 0; x < width; x++)
        {
            for (int ink = 0; ink < spot.Length; ink++)
                spot[ink] = coverages[(ink * width) + x];

            // Neighbours are often equal: then so is what is told of them.
            values[x] = x > 0 && spot.SequenceEqual(last) ? values[x - 1] : (float)Value(map, spot);
            spot.CopyTo(last);
        }
    }

    private double Value(SpotMap map, ReadOnlySpan<byte> spot)
    {
        if (map == SpotMap.ContrastRatio)
            return Ratio(Light(rowOverBlack, spot).Room.Y, Light(rowOverWhite, spot).Room.Y);
        (Xyz day, Xyz through) = Light(row, spot);
        double dark = through.Y * lampScale, lit = dark + (day.Y * roomScale);
        return map switch
        {
            SpotMap.TransmissionPercent => through.Y,
            SpotMap.RelativeTransmissionPercent => 100 * Ratio(through.Y / 100, bareTransmission),
            SpotMap.DayCdPerM2 => day.Y * roomScale,
            SpotMap.LitCdPerM2 => lit,
            SpotMap.ContrastInRoom => Contrast(uncoloured.Y, lit),
            SpotMap.ContrastInDark => Contrast(uncolouredInDark.Y, dark),
            _ => ShowThrough(day, spot),
        };
    }

    private double ShowThrough(Xyz day, ReadOnlySpan<byte> spot)
    {
        Span<byte> without = stackalloc byte[spot.Length];
        spot.CopyTo(without);
        foreach (int ink in behind)
            without[ink] = 0;
        return without.SequenceEqual(spot) ? 0 : Ciede2000.Between(DayLab(day), DayLab(Light(row, without).Room));
    }

    private static (Xyz Room, Xyz Lamp) Light(Lazy<LookRow> fast, ReadOnlySpan<byte> spot)
    {
        Span<float> byRoom = stackalloc float[3], byLamp = stackalloc float[3];
        fast.Value.Apart(spot, byRoom, byLamp);
        return (new(byRoom[0], byRoom[1], byRoom[2]), new(byLamp[0], byLamp[1], byLamp[2]));
    }

    private Lazy<LookRow> Fast(StackOptics stack) => new(() => LookRow.OfTristimulus(stack, room, lamp));

    private IEnumerable<int> Inks(int layer) => layer >= 0 && layer < optics.Layers.Count
        ? Enumerable.Range(optics.FirstInk(layer), optics.Layers[layer].Inks.Count)
        : throw new ArgumentException(Invariant($"Back layers: found place {layer}; wanted 0 to {optics.Layers.Count - 1}."));

    private Xyz RoomOf(StackOptics stack, ReadOnlySpan<double> coverages)
    {
        Span<double> reflectance = stackalloc double[Bands.Count], transmittance = stackalloc double[Bands.Count];
        stack.Solve(coverages, reflectance, transmittance);
        return room.Of(reflectance);
    }

    private Xyz LampOf(ReadOnlySpan<double> coverages)
    {
        Span<double> reflectance = stackalloc double[Bands.Count], transmittance = stackalloc double[Bands.Count];
        optics.Solve(coverages, reflectance, transmittance);
        return lamp.Of(transmittance);
    }

    // The box is grey: every band comes back 1/(1 − q·R) times.
    private double Gain(ReadOnlySpan<double> coverages)
    {
        Span<double> back = stackalloc double[Bands.Count];
        optics.SolveBack(coverages, back);
        for (int band = 0; band < Bands.Count; band++)
            back[band] = 1 / (1 - (optics.Backing * back[band]));
        return lamp.Of(back).Y / 100;
    }

    private Xyz EyeWhite()
    {
        Xyz white = room.White.Times((1 - adaptation.LampShare) * roomScale).Plus(uncoloured.Times(adaptation.LampShare));
        if (white.Y > 0)
            return white;
        if (adaptation.LampShare < 1)
            throw new ArgumentException("Eye: adapted to the room's light, and the room has none; wanted lux over 0.");

        // A piece that lets nothing through and a dark room leave nothing to adapt to: take the lamp itself.
        return lamp.White.Times(lampScale);
    }

    private Lab DayLab(Xyz day) => Lab.From(Bradford.Adapt(day, room.White, WhitePoints.Pcs), WhitePoints.Pcs);

    private Lab LitLab(Xyz lit)
    {
        double scale = 100 / eyeWhite.Y;
        Xyz seen = Cat16.Adapt(lit.Times(scale), eyeWhite.Times(scale), WhitePoints.Pcs, adaptation.Degree);
        double flatter = seen.Y > 0 ? Math.Pow(seen.Y / 100, adaptation.Exponent - 1) : 1;
        return Lab.From(seen.Times(flatter), WhitePoints.Pcs);
    }

    private static double Ratio(double part, double whole) => whole > 0 ? part / whole : 0;

    private static double Density(double share) => Math.Min(-Math.Log10(Math.Max(share, 1e-9)), SpotNumbers.MostDensity);

    private static double Contrast(double white, double spot) =>
        white <= 0 ? 1 : Math.Min(white / Math.Max(spot, 1e-300), SpotNumbers.MostContrast);
}
