using System.Runtime.Intrinsics;
using Laydown.Colour.Spectra;
using Laydown.Optics.Layers;
using Laydown.Optics.Looks;
using V = System.Runtime.Intrinsics.Vector256<double>;

namespace Laydown.Optics.Panels;

/// <summary>All of a stack that does not hang on its two pictures, band by band, and the closed forms that join it with the films.</summary>
internal sealed class PanelBands
{
    // Viewer's side: light in and out, own reflectance, what is returned inside (next to the surface; with the sheet between).
    private readonly double[] entry = Line(), own = Line(), returnsHere = Line(), returnsThere = Line();

    // White and what lies between the films.
    private readonly double[] whiteFront = Line(), whiteBack = Line(), whiteThrough = Line(), whiteOut = Line();

    // Lamp's side: the same as the viewer's, with and without the box behind; light of the lamp in and out to the eye.
    private readonly double[] farHere = Line(), farThereDay = Line(), farThereLit = Line(), lampEntry = Line();

    // Share of light that nothing spreads, and what a clear sheet lets through.
    private readonly double[] straight = Line(), slab = Line();
    private readonly bool mixes;
    private readonly double backing, gloss;

    internal PanelBands(PanelStack stack, double whiteStrength, double backing, bool allSpread)
    {
        this.backing = backing;
        gloss = allSpread ? 0 : stack.Sheet.GlossSeen * Boundary.Ink.At45;
        int[] order = [.. stack.Order];
        int first = Array.IndexOf(order, stack.DayLayer), last = Array.IndexOf(order, stack.NightLayer);
        int at = Array.IndexOf(order, PanelStack.SheetPlace);
        for (int band = 0; band < Bands.Count; band++)
        {
            LayerLight sheet = stack.Sheet.Inside[band];
            ViewerSide(band, at < first ? sheet : null);
            LampSide(band, at > last ? sheet : null);
            Between(band, stack, order[(first + 1)..last], whiteStrength);
            slab[band] = stack.Sheet.Straight[band];
            straight[band] = allSpread ? 0 : Straight(stack, whiteStrength, band);
            mixes |= straight[band] > 1e-9;
        }
    }

    /// <summary>Reflectance and transmittance of four bands from what the films let through once and twice.</summary>
    internal (V R, V T) Seen(int block, V f, V f2, V b, V b2)
    {
        V u = (At(returnsHere, block) * f2) + (At(returnsThere, block) * f * f);
        V here = At(farHere, block) * b2, bb = b * b;
        V day = here + (At(farThereDay, block) * bb), lit = here + (At(farThereLit, block) * bb);
        V ra = At(whiteFront, block), rb = At(whiteBack, block), tt = At(whiteThrough, block);
        V s = ra + (tt * day / (V.One - (rb * day)));
        V r = At(own, block) + (At(entry, block) * f * f * s / (V.One - (u * s)));
        V loop = ((V.One - (ra * u)) * (V.One - (rb * lit))) - (tt * u * lit);
        V t = At(lampEntry, block) * At(whiteOut, block) * f * b / loop;
        (r, t) = mixes ? Mixed(block, r, t, f * b) : (r, t);
        return (r + Vector256.Create(gloss), t);
    }

    /// <summary>The same with slopes: ∂R/∂f, ∂R/∂f2, ∂T/∂f, ∂T/∂f2, then the same for b, each 36 bands long; one formula after the
    /// other, as derived from the remarks of <see cref="PanelLight"/>.</summary>
    internal void Slopes(int block, V f, V f2, V b, V b2, Span<double> r, Span<double> t, Span<double> steep)
    {
        V here = At(returnsHere, block), there = At(returnsThere, block), farNear = At(farHere, block);
        V u = (here * f2) + (there * f * f);
        V day = (farNear * b2) + (At(farThereDay, block) * b * b);
        V lit = (farNear * b2) + (At(farThereLit, block) * b * b);
        V ra = At(whiteFront, block), rb = At(whiteBack, block), tt = At(whiteThrough, block);
        V e = At(entry, block);

        // By day: R of s, and s of what the lamp's side returns.
        V open = V.One / (V.One - (rb * day)), s = ra + (tt * day * open), escape = V.One / (V.One - (u * s));
        V seen = e * f * f * s * escape, bySeen = e * f * f * escape * escape, byU = bySeen * s * s, byFar = bySeen * tt * open * open;
        V rf = (e * f * s * escape * 2) + (byU * there * f * 2), rf2 = byU * here;
        V rb1 = byFar * At(farThereDay, block) * b * 2, rb2 = byFar * farNear;

        // Lit: T over the loop of light between both sides.
        V loop = ((V.One - (ra * u)) * (V.One - (rb * lit))) - (tt * u * lit);
        V k = At(lampEntry, block) * At(whiteOut, block) / loop, through = k * f * b;
        V loopU = through / loop * ((ra * (V.One - (rb * lit))) + (tt * lit)), loopV = through / loop * ((rb * (V.One - (ra * u))) + (tt * u));
        V tf = (k * b) + (loopU * there * f * 2), tf2 = loopU * here;
        V tb = (k * f) + (loopV * At(farThereLit, block) * b * 2), tb2 = loopV * farNear;
        V reflectance = At(own, block) + seen;
        if (mixes)
        {
            (V rp, V tp) = MixedSlopes(block, f * b);
            V spread = V.One - At(straight, block);
            (reflectance, through) = Mixed(block, reflectance, through, f * b);
            (rf, rf2, rb1, rb2) = ((rf * spread) + (rp * b), rf2 * spread, (rb1 * spread) + (rp * f), rb2 * spread);
            (tf, tf2, tb, tb2) = ((tf * spread) + (tp * b), tf2 * spread, (tb * spread) + (tp * f), tb2 * spread);
        }

        (reflectance + Vector256.Create(gloss)).CopyTo(r[(4 * block)..]);
        through.CopyTo(t[(4 * block)..]);
        Put(steep, block, rf, rf2, tf, tf2);
        Put(steep[(4 * Bands.Count)..], block, rb1, rb2, tb, tb2);
    }

    private static void Put(Span<double> steep, int block, V one, V two, V three, V four)
    {
        one.CopyTo(steep[(4 * block)..]);
        two.CopyTo(steep[(Bands.Count + (4 * block))..]);
        three.CopyTo(steep[((2 * Bands.Count) + (4 * block))..]);
        four.CopyTo(steep[((3 * Bands.Count) + (4 * block))..]);
    }

    private void ViewerSide(int band, LayerLight? sheet)
    {
        Boundary surface = Boundary.Ink;
        double ri = surface.DiffuseInside;
        if (sheet is not { } inside)
        {
            (entry[band], returnsHere[band]) = (surface.InFrom45 * surface.OutNormal, ri);
            return;
        }

        double open = 1 / (1 - (ri * inside.FrontReflectance));
        entry[band] = surface.InFrom45 * surface.OutNormal * inside.Inward * inside.Outward * open * open;
        own[band] = surface.InFrom45 * surface.OutNormal * inside.FrontReflectance * open;
        returnsThere[band] = inside.BackReflectance + (inside.Inward * inside.Outward * ri * open);
    }

    private void LampSide(int band, LayerLight? sheet)
    {
        Boundary surface = Boundary.Ink;
        double ri = surface.DiffuseInside;
        double box = surface.OutDiffuse * surface.InDiffuse * backing / (1 - (backing * surface.DiffuseOutside));
        lampEntry[band] = surface.InDiffuse * Eye(band);
        if (sheet is not { } inside)
        {
            (farHere[band], farThereDay[band]) = (ri, box);
            return;
        }

        double Behind(double far) =>
            inside.FrontReflectance + (inside.Inward * inside.Outward * far / (1 - (inside.BackReflectance * far)));
        (farThereDay[band], farThereLit[band]) = (Behind(ri + box), Behind(ri));
        lampEntry[band] *= inside.Outward / (1 - (inside.BackReflectance * ri));
    }

    // What goes from under the front film straight to the eye.
    private double Eye(int band) =>
        Math.Sqrt(entry[band] / (Boundary.Ink.InFrom45 * Boundary.Ink.OutNormal)) * Boundary.Ink.OutNormal;

    private void Between(int band, PanelStack stack, int[] places, double strength)
    {
        LayerLight whole = LayerLight.Empty;
        foreach (int place in places)
        {
            if (place == PanelStack.SheetPlace)
                whole = whole.Over(stack.Sheet.Inside[band]);
            else if (stack.Layers[place].IsWhite)
                whole = stack.Layers[place].Inks.Aggregate(whole, (above, ink) => above.Over(StackOptics.White(ink, band, strength)));
        }

        (whiteFront[band], whiteBack[band]) = (whole.FrontReflectance, whole.BackReflectance);
        (whiteThrough[band], whiteOut[band]) = (whole.Inward * whole.Outward, whole.Outward);
    }

    private static double Straight(PanelStack stack, double strength, int band) => StraightShare.Of(
        stack.Sheet.Scatter[band] + stack.WhiteLayers.SelectMany(l => stack.Layers[l].Inks).Sum(ink => ink.Scatter[band] * strength));

    // Straight light: a slab with the films in it, what stands behind seen through it.
    private (V R, V T) Mixed(int block, V r, V t, V films)
    {
        V share = At(straight, block), inside = At(slab, block) * films;
        (V slabR, V slabT) = (V.Zero, V.Zero);
        for (int lane = 0; lane < 4; lane++)
        {
            (double oneR, double oneT) = SlabSeen(inside[lane], backing);
            (slabR, slabT) = (slabR.WithElement(lane, oneR), slabT.WithElement(lane, oneT));
        }

        return (r + (share * (slabR - r)), t + (share * (slabT - t)));
    }

    private (V R, V T) MixedSlopes(int block, V films)
    {
        (V rp, V tp) = (V.Zero, V.Zero);
        for (int lane = 0; lane < 4; lane++)
        {
            int band = (4 * block) + lane;
            double inside = slab[band] * films[lane], step = 1e-4;
            (double highR, double highT) = SlabSeen(Math.Min(1, inside + step), backing);
            (double lowR, double lowT) = SlabSeen(Math.Max(0, inside - step), backing);
            double scale = straight[band] * slab[band] / (Math.Min(1, inside + step) - Math.Max(0, inside - step));
            (rp, tp) = (rp.WithElement(lane, (highR - lowR) * scale), tp.WithElement(lane, (highT - lowT) * scale));
        }

        return (rp, tp);
    }

    // A clear slab as StackOptics takes it: lit at 45°, seen straight on, and the lamp's light straight through.
    private static (double R, double T) SlabSeen(double inside, double backing)
    {
        double slanted = StackOptics.Through(Boundary.Ink.At45, inside), upright = StackOptics.Through(Boundary.Ink.Normal, inside);
        double at = inside * 64;
        int below = Math.Min((int)at, 63);
        double low = StackOptics.SlabReflectance[below], back = low + ((at - below) * (StackOptics.SlabReflectance[below + 1] - low));
        return (slanted * backing * upright / (1 - (backing * back)), upright);
    }

    private static double[] Line() => new double[Bands.Count];

    private static V At(double[] line, int block) => Vector256.Create<double>(line.AsSpan(4 * block, 4));
}
