using System.Runtime.Intrinsics;
using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;
using Laydown.Optics.Looks;
using V = System.Runtime.Intrinsics.Vector256<double>;

namespace Laydown.Optics.Panels;

/// <summary>A panel at one strength of its white: coverages of both colour layers → both views, with their slopes.</summary>
/// <remarks>
/// With u = what the viewer's side returns of light from inside, v = what the lamp's side returns, s = (Ra + T T' v / (1 − Rb v)):
/// R = R0 + E f² s / (1 − u s) and T = K f b T' / ((1 − Ra u)(1 − Rb v) − T T' u v); Ra, Rb, T, T' are white and what lies between the films
/// [Kubelka1954]. A film next to a surface is crossed there and back at one place (f2, b2), one with the sheet behind it at two (f², b²).
/// Where the white is thin, light that nothing spreads is mixed in as <see cref="StackOptics"/> does.
/// </remarks>
public sealed class PanelLight
{
    private const int Blocks = 9;
    private readonly PanelModel model;
    private readonly PanelBands bands;
    private readonly int front, inks;

    internal PanelLight(PanelModel model, double whiteStrength, bool allSpread = false)
    {
        (this.model, WhiteStrength) = (model, whiteStrength);
        (front, inks) = (model.Front.Inks, model.InkCount);
        bands = new(model.Stack, whiteStrength, model.Day.Backing, allSpread);
    }

    /// <summary>What a search moves.</summary>
    internal PanelTones Tones => model.Tones;

    /// <summary>Share of the full laydown of every white layer.</summary>
    public double WhiteStrength { get; }

    /// <summary>Inks of both layers, those in front first.</summary>
    public int InkCount => inks;

    /// <summary>What is seen, absolute: X, Y, Z with Y in cd/m².</summary>
    /// <param name="coverages">Inks in front, then behind, 0 to 1.</param>
    public (Xyz Day, Xyz Night) See(ReadOnlySpan<double> coverages)
    {
        Span<double> views = stackalloc double[6];
        See(coverages, views);
        return (new(views[0], views[1], views[2]), new(views[3], views[4], views[5]));
    }

    /// <summary>Reflectance by day at 45:0 and transmittance of the lamp's light seen straight on, band by band.</summary>
    /// <param name="coverages">Inks in front, then behind, 0 to 1.</param>
    /// <param name="reflectance">Receives 36 values.</param>
    /// <param name="transmittance">Receives 36 values.</param>
    public void Spectra(ReadOnlySpan<double> coverages, Span<double> reflectance, Span<double> transmittance)
    {
        Span<double> f = stackalloc double[Bands.Count], f2 = stackalloc double[Bands.Count];
        Span<double> b = stackalloc double[Bands.Count], b2 = stackalloc double[Bands.Count];
        model.Front.Cross(coverages[..front], f, f2);
        model.Back.Cross(coverages[front..], b, b2);
        for (int block = 0; block < Blocks; block++)
        {
            (V r, V t) = bands.Seen(block, At(f, block), At(f2, block), At(b, block), At(b2, block));
            r.CopyTo(reflectance[(4 * block)..]);
            t.CopyTo(transmittance[(4 * block)..]);
        }
    }

    /// <summary>Both views as six numbers: X, Y, Z by day, then lit, in cd/m².</summary>
    internal void See(ReadOnlySpan<double> coverages, Span<double> views)
    {
        Span<double> r = stackalloc double[Bands.Count], t = stackalloc double[Bands.Count];
        Spectra(coverages, r, t);
        for (int axis = 0; axis < 3; axis++)
        {
            views[axis] = Sum(model.DayLight, axis, r, t);
            views[3 + axis] = Sum(model.NightLight, axis, r, t);
        }
    }

    /// <summary>Both views and how they change with each ink.</summary>
    /// <param name="coverages">Inks in front, then behind.</param>
    /// <param name="views">Receives X, Y, Z by day, then lit.</param>
    /// <param name="slopes">Receives for each ink the six changes for one unit of coverage: inks × 6.</param>
    internal void See(ReadOnlySpan<double> coverages, Span<double> views, Span<double> slopes)
    {
        Span<double> f = stackalloc double[Bands.Count], f2 = stackalloc double[Bands.Count];
        Span<double> b = stackalloc double[Bands.Count], b2 = stackalloc double[Bands.Count];
        model.Front.Cross(coverages[..front], f, f2);
        model.Back.Cross(coverages[front..], b, b2);
        Span<double> r = stackalloc double[Bands.Count], t = stackalloc double[Bands.Count];

        // How both spectra change with each of the four crossings, band by band.
        Span<double> steep = stackalloc double[8 * Bands.Count];
        for (int block = 0; block < Blocks; block++)
            bands.Slopes(block, At(f, block), At(f2, block), At(b, block), At(b2, block), r, t, steep);
        for (int axis = 0; axis < 3; axis++)
        {
            views[axis] = Sum(model.DayLight, axis, r, t);
            views[3 + axis] = Sum(model.NightLight, axis, r, t);
        }

        for (int ink = 0; ink < inks; ink++)
        {
            bool inFront = ink < front;
            PanelFilm film = inFront ? model.Front : model.Back;
            int of = inFront ? ink : ink - front;
            ReadOnlySpan<double> steepness = steep[(inFront ? 0 : 4 * Bands.Count)..];
            Along(film.Once[of], film.Twice[of], coverages[ink], inFront ? f : b, inFront ? f2 : b2, steepness, r, t);
            for (int axis = 0; axis < 3; axis++)
            {
                slopes[(6 * ink) + axis] = Sum(model.DayLight, axis, r, t);
                slopes[(6 * ink) + 3 + axis] = Sum(model.NightLight, axis, r, t);
            }
        }
    }

    // One ink: its crossing falls by its own share, the other inks' shares stay as they are.
    private static void Along(
        double[] once, double[] twice, double coverage, ReadOnlySpan<double> one, ReadOnlySpan<double> two, ReadOnlySpan<double> steep,
        Span<double> r, Span<double> t)
    {
        V amount = Vector256.Create(coverage);
        for (int block = 0; block < Blocks; block++)
        {
            V g = At(once, block), h = At(twice, block);
            V dOne = -(g * At(one, block)) / (V.One - (amount * g));
            V dTwo = -(h * At(two, block)) / (V.One - (amount * h));
            ((dOne * At(steep, block)) + (dTwo * At(steep, Blocks + block))).CopyTo(r[(4 * block)..]);
            ((dOne * At(steep, (2 * Blocks) + block)) + (dTwo * At(steep, (3 * Blocks) + block))).CopyTo(t[(4 * block)..]);
        }
    }

    private static double Sum(ViewLight view, int axis, ReadOnlySpan<double> r, ReadOnlySpan<double> t)
    {
        V sum = V.Zero;
        if (view.SeesRoom)
        {
            for (int block = 0; block < Blocks; block++)
                sum += At(r, block) * At(view.Room[axis], block);
        }

        if (view.SeesLamp)
        {
            for (int block = 0; block < Blocks; block++)
                sum += At(t, block) * At(view.Lamp[axis], block);
        }

        return Vector256.Sum(sum);
    }

    private static V At(ReadOnlySpan<double> line, int block) => Vector256.Create(line[(4 * block)..]);
}
