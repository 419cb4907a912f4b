using Laydown.Colour.Spectra;
using Laydown.Measures;
using Laydown.Optics.Layers;

namespace Laydown.Optics.Looks;

/// <summary>Reflectance by day and transmittance for a lamp behind of any stack of layers and a sheet.</summary>
/// <remarks>
/// Two pictures of the light are computed and mixed by the share of light that nothing spreads, which falls with the S·X of whites and
/// turbid colours as radiative transfer says (docs/decisions/0007): spread light — surfaces, films, whites and sheet composed by the adding
/// method [Kubelka1954], dots next to a surface crossed twice at the same place [Williams1953] — and straight light through a clear slab,
/// where the diffuse formulas would be wrong by up to 0.3.
/// Seen straight on; the room's light falls in at 45° with gloss left out, the lamp's light is diffuse.
/// Halftones: t = (1 − a + a·t^(1/n))^n for each ink, screens independent; a layer with an ink that scatters is no film but a part
/// of the core (<see cref="TurbidHalftone"/>).
/// </remarks>
public sealed class StackOptics
{
    private readonly double[][] roots;
    private readonly int[] firstInk;
    private readonly TurbidHalftone[]?[] turbid;
    private readonly double exponent;

    /// <summary>A stack.</summary>
    /// <param name="sheet">The bare sheet.</param>
    /// <param name="layers">Layers in the order they are printed, each face from the sheet outward.</param>
    /// <param name="backing">Reflectance of what stands behind, an air gap away, 0 to 0.99.</param>
    /// <param name="viewedFrom">The face toward the viewer.</param>
    /// <param name="yuleNielsen">Factor n of the films' transmittance; 1 fits a diffusing white under the dots (the surface terms
    /// spread the light); 1 to endless.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range, or more than 8 inks in a layer that scatters.</exception>
    public StackOptics(
        LookSheet sheet, IReadOnlyList<LookLayer> layers, double backing, LookFace viewedFrom = LookFace.First, double yuleNielsen = 1)
    {
        Bounds.Within(yuleNielsen, 1, double.PositiveInfinity);
        (Sheet, Layers, Backing, exponent) = (sheet, [.. layers], Bounds.Within(backing, 0, 0.99), yuleNielsen);
        roots = [.. layers.SelectMany(l => l.Inks).Select(i => i.Density.Select(d => Root(d, yuleNielsen)).ToArray())];
        InkCount = roots.Length;
        firstInk = [.. layers.Select((_, i) => layers.Take(i).Sum(l => l.Inks.Count))];
        turbid = [.. layers.Select(l => l.IsWhite || !l.Scatters ? null : Halftones(l, yuleNielsen))];

        // From the viewer inward: the last printed first, then the sheet, then the other face from the sheet outward.
        int[] order = [.. OnFace(LookFace.First).Reverse(), SheetPlace, .. OnFace(LookFace.Second)];
        if (viewedFrom == LookFace.Second)
            Array.Reverse(order);
        Front = [.. order.TakeWhile(IsFilm)];
        Back = Front.Count == order.Length ? [] : [.. order.Reverse().TakeWhile(IsFilm)];
        Middle = order[Front.Count..(order.Length - Back.Count)];
        AllClear = sheet.IsClear && !layers.Any(l => l.Scatters);
    }

    /// <summary>Stands for the sheet in <see cref="Middle"/>.</summary>
    internal const int SheetPlace = -1;

    /// <summary>Number of coverages a spot has: all inks of all layers.</summary>
    public int InkCount { get; }

    /// <summary>The sheet.</summary>
    public LookSheet Sheet { get; }

    /// <summary>The layers in print order.</summary>
    public IReadOnlyList<LookLayer> Layers { get; }

    /// <summary>Reflectance behind the piece.</summary>
    public double Backing { get; }

    /// <summary>Whether nothing in the stack spreads light.</summary>
    internal bool AllClear { get; }

    /// <summary>Clear films next to the viewer's surface, from outside inward.</summary>
    internal IReadOnlyList<int> Front { get; }

    /// <summary>Clear films next to the far surface, from outside inward.</summary>
    internal IReadOnlyList<int> Back { get; }

    /// <summary>Layers between, from the viewer inward, the sheet among them.</summary>
    internal IReadOnlyList<int> Middle { get; }

    /// <summary>Diffuse reflectance of a clear slab between air and air by the transmittance of its inside; 65 even steps from 0 to
    /// 1.</summary>
    internal static IReadOnlyList<double> SlabReflectance { get; } =
        [.. Enumerable.Range(0, 65).Select(i => Boundary.MeanOverDirections(sine =>
    {
        double r = Boundary.Ink.AtSine(sine), t = i / 64.0;
        return r >= 1 ? 1 : r + ((1 - r) * (1 - r) * r * t * t / (1 - (r * r * t * t)));
    }))];

    /// <summary>Reflectance seen at 45:0 and transmittance of lamp light seen straight on, band by band.</summary>
    /// <param name="coverages">Layer after layer in print order, the inks of each layer in their order, 0 to 1.</param>
    /// <param name="reflectance">Receives 36 values.</param>
    /// <param name="transmittance">Receives 36 values: luminance seen over luminance of the lamp.</param>
    /// <exception cref="ArgumentException">Another number of coverages.</exception>
    public void Solve(ReadOnlySpan<double> coverages, Span<double> reflectance, Span<double> transmittance)
    {
        CheckCount(coverages);
        for (int band = 0; band < Bands.Count; band++)
        {
            double straight = Straight(coverages, band);
            (double r, double t) = straight < 1 ? Spread(coverages, band) : default;
            (double slabR, double slabT) = straight > 0 ? Slab(coverages, band) : default;
            reflectance[band] = (straight * slabR) + ((1 - straight) * r) + (Sheet.GlossSeen * Boundary.Ink.At45);
            transmittance[band] = (straight * slabT) + ((1 - straight) * t);
        }
    }

    /// <summary>The same as if whites and sheet spread all light: what the adding method says by itself; wrong where little is
    /// spread.</summary>
    /// <inheritdoc cref="Solve"/>
    /// <remarks>Gloss of a textured sheet is left out.</remarks>
    public void SolveSpread(ReadOnlySpan<double> coverages, Span<double> reflectance, Span<double> transmittance)
    {
        CheckCount(coverages);
        for (int band = 0; band < Bands.Count; band++)
            (reflectance[band], transmittance[band]) = Spread(coverages, band);
    }

    /// <summary>Reflectance of the whole piece for diffuse light from behind, gloss included, band by band: what it sends back into a lamp
    /// box.</summary>
    /// <remarks>A box whose inside sends back q shines 1/(1 − q·R) times as bright behind a piece of reflectance R as it does
    /// bare.</remarks>
    /// <param name="coverages">Layer after layer in print order, the inks of each layer in their order, 0 to 1.</param>
    /// <param name="reflectance">Receives 36 values.</param>
    /// <exception cref="ArgumentException">Another number of coverages.</exception>
    public void SolveBack(ReadOnlySpan<double> coverages, Span<double> reflectance)
    {
        CheckCount(coverages);
        for (int band = 0; band < Bands.Count; band++)
        {
            double straight = Straight(coverages, band);
            reflectance[band] = (straight * SlabBack(SlabInside(coverages, band))) + ((1 - straight) * SpreadBack(coverages, band));
        }
    }

    /// <summary>Layers of colour behind the first thing that scatters, from the viewer inward: a white, a turbid colour or the sheet; none
    /// where nothing scatters.</summary>
    internal IEnumerable<int> BehindScatter() => AllClear
        ? []
        : Middle.SkipWhile(place => place == SheetPlace ? Sheet.IsClear : IsFilm(place)).Skip(1).Concat(Back.Reverse())
            .Where(place => place != SheetPlace && !Layers[place].IsWhite);

    /// <summary>Index of a layer's first coverage.</summary>
    internal int FirstInk(int layer) => firstInk[layer];

    /// <summary>The halftones of a layer of colours that scatter, band by band; null for any other layer.</summary>
    internal IReadOnlyList<TurbidHalftone>? Turbid(int layer) => turbid[layer];

    /// <summary>Transmittance of one ink at a coverage: crossed once, and crossed there and back at the same place.</summary>
    internal (double Once, double Twice) Film(int ink, int band, double coverage)
    {
        double root = roots[ink][band];
        if (double.IsPositiveInfinity(exponent))
            return (Math.Exp(-coverage * root), Math.Exp(-2 * coverage * root));
        double once = 1 - coverage + (coverage * root), twice = 1 - coverage + (coverage * root * root);
        return exponent == 1 ? (once, twice) : (Math.Pow(once, exponent), Math.Pow(twice, exponent));
    }

    /// <summary>Share of light that goes through an ink at a coverage without being spread; of several inks it is the share of the sum
    /// of their S·X, not the product of their shares.</summary>
    internal static double Straight(LookInk ink, int band, double coverage) => StraightShare.Of(ink.Scatter[band] * coverage);

    /// <summary>A white at a coverage: thinner where there is less of it.</summary>
    internal static LayerLight White(LookInk white, int band, double coverage) =>
        KubelkaMunk.Layer(white.Absorption[band] * coverage, white.Scatter[band] * coverage);

    private void CheckCount(ReadOnlySpan<double> coverages)
    {
        if (coverages.Length != InkCount)
            throw new ArgumentException(Invariant($"{coverages.Length} coverages: wanted {InkCount}."), nameof(coverages));
    }

    private IEnumerable<int> OnFace(LookFace face) => Enumerable.Range(0, Layers.Count).Where(i => Layers[i].Face == face);

    private bool IsFilm(int place) => place != SheetPlace && !Layers[place].Scatters;

    // Of an endless n only the logarithm is kept.
    private static double Root(double density, double exponent) =>
        double.IsPositiveInfinity(exponent) ? density * Math.Log(10) : Math.Pow(10, -density / exponent);

    private static TurbidHalftone[] Halftones(LookLayer layer, double exponent) => [.. Enumerable.Range(0, Bands.Count).Select(band =>
        new TurbidHalftone([.. layer.Inks.Select(i => new TurbidAmount(i.Density[band] * Math.Log(10), i.Scatter[band]))], exponent))];

    private double Straight(ReadOnlySpan<double> coverages, int band)
    {
        double scatter = Sheet.Scatter[band];
        for (int layer = 0; layer < Layers.Count; layer++)
        {
            for (int i = 0; Layers[layer].Scatters && i < Layers[layer].Inks.Count; i++)
                scatter += Layers[layer].Inks[i].Scatter[band] * coverages[FirstInk(layer) + i];
        }

        return StraightShare.Of(scatter);
    }

    private (double Once, double Twice) Films(IReadOnlyList<int> places, ReadOnlySpan<double> coverages, int band)
    {
        double once = 1, twice = 1;
        foreach (int place in places)
        {
            for (int i = 0, ink = FirstInk(place); i < Layers[place].Inks.Count; i++, ink++)
            {
                (double one, double two) = Film(ink, band, coverages[ink]);
                (once, twice) = (once * one, twice * two);
            }
        }

        return (once, twice);
    }

    private LayerLight Part(int place, ReadOnlySpan<double> coverages, int band)
    {
        if (place == SheetPlace)
            return Sheet.Inside[band];
        if (IsFilm(place))
            return LayerLight.Symmetric(0, Films([place], coverages, band).Once);
        if (turbid[place] is { } halftones)
            return halftones[band].Layer(coverages.Slice(FirstInk(place), Layers[place].Inks.Count));

        LayerLight whites = LayerLight.Empty;
        for (int i = 0; i < Layers[place].Inks.Count; i++)
            whites = whites.Over(White(Layers[place].Inks[i], band, coverages[FirstInk(place) + i]));
        return whites;
    }

    private (double Reflectance, double Transmittance) Spread(ReadOnlySpan<double> coverages, int band)
    {
        Boundary surface = Boundary.Ink;
        (double f, double f2) = Films(Front, coverages, band);
        (double b, double b2) = Films(Back, coverages, band);
        LayerLight core = Core(coverages, band);

        // What comes back from behind: the far surface seen from inside, and for room light what stands behind the piece.
        double r1 = surface.DiffuseInside * f2;
        double far = surface.DiffuseInside * b2;
        double behind = far + (surface.OutDiffuse * surface.InDiffuse * b * b * Backing / (1 - (Backing * surface.DiffuseOutside)));

        double seen = core.FrontReflectance + (core.Inward * core.Outward * behind / (1 - (core.BackReflectance * behind)));
        double reflectance = surface.InFrom45 * surface.OutNormal * f * f * seen / (1 - (r1 * seen));
        double loop = ((1 - (core.FrontReflectance * r1)) * (1 - (core.BackReflectance * far))) - (core.Inward * core.Outward * r1 * far);
        return (reflectance, surface.InDiffuse * surface.OutNormal * f * b * core.Outward / loop);
    }

    private (double Reflectance, double Transmittance) Slab(ReadOnlySpan<double> coverages, int band)
    {
        double t = SlabInside(coverages, band);
        double slanted = Through(Boundary.Ink.At45, t), straight = Through(Boundary.Ink.Normal, t);
        return (slanted * Backing * straight / (1 - (Backing * SlabBack(t))), straight);
    }

    private double SlabInside(ReadOnlySpan<double> coverages, int band)
    {
        double t = Sheet.Straight[band];
        for (int layer = 0; layer < Layers.Count; layer++)
            t *= Layers[layer].IsWhite ? 1 : Films([layer], coverages, band).Once;
        return t;
    }

    private static double SlabBack(double t)
    {
        double at = t * 64;
        int below = Math.Min((int)at, 63);
        return SlabReflectance[below] + ((at - below) * (SlabReflectance[below + 1] - SlabReflectance[below]));
    }

    // The piece from behind, with nothing there to send light back.
    private double SpreadBack(ReadOnlySpan<double> coverages, int band)
    {
        Boundary surface = Boundary.Ink;
        (_, double f2) = Films(Front, coverages, band);
        (double b, double b2) = Films(Back, coverages, band);
        LayerLight core = Core(coverages, band);
        double r1 = surface.DiffuseInside * f2;
        double seen = core.BackReflectance + (core.Inward * core.Outward * r1 / (1 - (core.FrontReflectance * r1)));
        return surface.DiffuseOutside + (surface.InDiffuse * surface.OutDiffuse * b * b * seen / (1 - (surface.DiffuseInside * b2 * seen)));
    }

    private LayerLight Core(ReadOnlySpan<double> coverages, int band)
    {
        LayerLight core = LayerLight.Empty;
        foreach (int place in Middle)
            core = core.Over(Part(place, coverages, band));
        return core;
    }

    /// <summary>Transmittance of a clear slab by the reflectance of a face and the transmittance of its inside.</summary>
    internal static double Through(double r, double t) => (1 - r) * (1 - r) * t / (1 - (r * r * t * t));
}
