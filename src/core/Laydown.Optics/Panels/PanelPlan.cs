using Laydown.Colour.Spaces;

namespace Laydown.Optics.Panels;

/// <summary>All that is settled once for a pair of pictures; turns their pixels into laydown of every layer.</summary>
/// <remarks>May serve several threads at once; the same pixels give the same bytes whatever the bands, the threads and the order.</remarks>
public sealed class PanelPlan
{
    /// <summary>Values of a cell of <see cref="Shift"/>.</summary>
    internal const int ShiftChannels = 14;

    // Wishes further apart than this, over all six numbers, do not move together.
    private const float Alike = 15;

    // Where wishes differ by less than about this there is no contrast to keep.
    private const float Flat = 5;

    private readonly PairTable[] tables;
    private readonly double[] strengths;
    private readonly Lazy<PanelLight>[] lights;
    private readonly int[] frontPlanes, backPlanes, whitePlanes, clearPlanes;

    internal PanelPlan(PanelModel model, PanelWish wish, PanelAim aim, PairTable[] tables, SlowMap? shift, SlowMap? white)
    {
        (Model, Wish, Aim, this.tables, Shift, White) = (model, wish, aim, tables, shift, white);
        strengths = [.. tables.Select(t => t.Solver.Light.WhiteStrength)];
        lights = [.. Enumerable.Range(0, 256).Select(code => new Lazy<PanelLight>(() => model.At(code / 255.0)))];
        PanelStack stack = model.Stack;
        int[] PlanesOf(int layer) => [.. Enumerable.Range(stack.FirstCoverage(layer), stack.Layers[layer].Inks.Count)];
        (frontPlanes, backPlanes) = (PlanesOf(stack.DayLayer), PlanesOf(stack.NightLayer));
        whitePlanes = [.. stack.WhiteLayers.SelectMany(PlanesOf)];
        clearPlanes = [.. Enumerable.Range(0, stack.Layers.Count)
            .Where(l => l != stack.DayLayer && l != stack.NightLayer && !stack.WhiteLayers.Contains(l)).SelectMany(PlanesOf)];
    }

    /// <summary>What was wished.</summary>
    public PanelWish Wish { get; }

    /// <summary>Whites of both views, lift and exposure, as chosen.</summary>
    public PanelAim Aim { get; }

    /// <summary>Strengths of the white that are used, rising.</summary>
    public IReadOnlyList<double> WhiteStrengths => strengths;

    /// <summary>Inks of all layers in print order.</summary>
    public int CoverageCount => Model.Stack.CoverageCount;

    /// <summary>Whether colours scatter and what they throw back was left out.</summary>
    public bool ScatterLeftOut => Model.Stack.ScatterLeftOut;

    /// <summary>Whether the panel has light inks that stay bare, because the pair comes nearer without them.</summary>
    public bool LightInksBare => Model.Stack.LightInksBare;

    /// <summary>Nodes of the tables that were solved until now.</summary>
    public int NodeCount => tables.Sum(t => t.NodeCount);

    internal PanelModel Model { get; }

    internal SlowMap? Shift { get; }

    internal SlowMap? White { get; }

    internal IReadOnlyList<PairTable> Tables => tables;

    /// <summary>Laydown of a band of rows.</summary>
    /// <param name="firstRow">First row of the band in the picture.</param>
    /// <param name="rows">Rows of the band.</param>
    /// <param name="width">Pixels of the picture across.</param>
    /// <param name="height">Pixels of the picture down.</param>
    /// <param name="pair">Six values a pixel of the band, as <see cref="PairPicture.Pixels"/>.</param>
    /// <param name="planes">Receives coverage after coverage in print order, each rows × width bytes, 255 = full laydown; sums of colour
    /// layers are within their limits.</param>
    /// <exception cref="ArgumentException">A span has another length.</exception>
    public void Rows(int firstRow, int rows, int width, int height, ReadOnlySpan<float> pair, Span<byte> planes)
    {
        int pixels = rows * width;
        if (pair.Length != 6 * pixels || planes.Length != CoverageCount * pixels)
        {
            throw new ArgumentException(
                Invariant($"{pair.Length} values and {planes.Length} bytes for {pixels} pixels: wanted 6 and {CoverageCount} for each."), nameof(pair));
        }

        foreach (int plane in clearPlanes)
            planes.Slice(plane * pixels, pixels).Fill(255);
        Span<float> inks = stackalloc float[Model.InkCount];
        Span<byte> spot = stackalloc byte[Model.InkCount];
        bool flat = Shift is null && White is null;
        byte white = 0;
        for (int i = 0; i < pixels; i++)
        {
            // Where nothing hangs on the place, equal neighbours get equal inks.
            ReadOnlySpan<float> here = pair.Slice(6 * i, 6);
            if (i == 0 || !flat || !here.SequenceEqual(pair.Slice((6 * i) - 6, 6)))
            {
                double strength = InksAt(here, ((i % width) + 0.5) / width, (firstRow + (i / width) + 0.5) / height, inks);
                white = (byte)Math.Round(255 * strength);
                Narrow(inks, spot);
            }

            Put(planes[i..], pixels, spot, white);
        }
    }

    private void Put(Span<byte> planes, int pixels, ReadOnlySpan<byte> spot, byte white)
    {
        foreach (int plane in whitePlanes)
            planes[plane * pixels] = white;
        for (int ink = 0; ink < frontPlanes.Length; ink++)
            planes[frontPlanes[ink] * pixels] = spot[ink];
        for (int ink = 0; ink < backPlanes.Length; ink++)
            planes[backPlanes[ink] * pixels] = spot[frontPlanes.Length + ink];
    }

    /// <summary>What is aimed at, as the eye adapted to the white of each view sees it: the same layout as the pair.</summary>
    /// <param name="pair">Six values a pixel.</param>
    /// <param name="wanted">Receives six values a pixel.</param>
    public void Wanted(ReadOnlySpan<float> pair, Span<float> wanted)
    {
        for (int i = 0; i + 6 <= pair.Length; i += 6)
        {
            Lab day = Aim.Day(new(pair[i], pair[i + 1], pair[i + 2]));
            (wanted[i], wanted[i + 1], wanted[i + 2]) = ((float)day.L, (float)day.A, (float)day.B);
            pair.Slice(i + 3, 3).CopyTo(wanted[(i + 3)..]);
        }
    }

    /// <summary>How inks at a strength of white look, each view to its white.</summary>
    internal (Lab Day, Lab Night) Seen(ReadOnlySpan<double> inks, double strength)
    {
        (Xyz day, Xyz night) = LightAt(strength).See(inks);
        return (Aim.SeenByDay(day), Aim.SeenLit(night));
    }

    /// <summary>The panel at a strength of white, to the nearest of 255 codes as files hold it.</summary>
    internal PanelLight LightAt(double strength) => lights[(int)Math.Round(255 * strength)].Value;

    /// <summary>Inks of a pixel; returns the strength of the white.</summary>
    internal double InksAt(ReadOnlySpan<float> pair, double x, double y, Span<float> inks)
    {
        Span<float> wish = stackalloc float[6];
        Wanted(pair, wish);
        if (Shift is not null)
            Move(wish, x, y);

        return InksOf(wish, StrengthAt(x, y), inks);
    }

    // A wish moves with its surroundings as far as it is like those of them that cannot be reached.
    private void Move(Span<float> wish, double x, double y)
    {
        Span<float> around = stackalloc float[ShiftChannels];
        Shift!.At(x, y, around);
        float weight = around[12], apart = 0, mean = 0;
        if (weight < 1e-3f)
            return;
        for (int i = 0; i < 6; i++)
            (apart, mean) = (apart + Square(wish[i] - (around[6 + i] / weight)), mean + Square(around[6 + i] / weight));
        float spread = MathF.Max(0, (around[13] / weight) - mean), lively = spread / (spread + (Flat * Flat));
        float share = lively * MathF.Min(1, weight) * MathF.Exp(-apart / (2 * ((Alike * Alike) + spread))) / weight;
        for (int i = 0; i < 6; i++)
            wish[i] += share * around[i];
    }

    private static float Square(float value) => value * value;

    /// <summary>Strength of the white at a place.</summary>
    internal double StrengthAt(double x, double y)
    {
        if (White is null)
            return strengths[0];
        Span<float> strength = stackalloc float[1];
        White.At(x, y, strength);
        return Wish.White == WhiteUse.Free ? Math.Clamp(strength[0], strengths[0], strengths[^1]) : strengths[Nearest(strength[0])];
    }

    /// <summary>Inks for a wanted pair at a strength of white: between two tables they are mixed.</summary>
    internal double InksOf(ReadOnlySpan<float> wish, double strength, Span<float> inks)
    {
        Span<float> tones = stackalloc float[Model.Tones.Count], below = stackalloc float[Model.Tones.Count];
        int above = Array.FindIndex(strengths, s => s >= strength - 1e-9);
        tables[above].Inks(wish, tones);
        if (above > 0 && strengths[above] - strength > 1e-9)
        {
            tables[above - 1].Inks(wish, below);
            float part = (float)((strengths[above] - strength) / (strengths[above] - strengths[above - 1]));
            for (int tone = 0; tone < tones.Length; tone++)
                tones[tone] += part * (below[tone] - tones[tone]);
        }

        Spread(tones, inks);
        return strength;
    }

    private void Spread(ReadOnlySpan<float> tones, Span<float> inks)
    {
        Span<double> wide = stackalloc double[tones.Length], all = stackalloc double[inks.Length];
        for (int tone = 0; tone < tones.Length; tone++)
            wide[tone] = tones[tone];
        Model.Tones.Inks(wide, all);
        for (int ink = 0; ink < inks.Length; ink++)
            inks[ink] = (float)all[ink];
    }

    private int Nearest(double strength)
    {
        int nearest = 0;
        for (int i = 1; i < strengths.Length; i++)
            nearest = Math.Abs(strengths[i] - strength) < Math.Abs(strengths[nearest] - strength) ? i : nearest;
        return nearest;
    }

    // To bytes; where rounding puts a sum over its limit, the inks that were rounded up most give one code each.
    private void Narrow(ReadOnlySpan<float> inks, Span<byte> spot)
    {
        PanelLimits limits = Model.Stack.Limits;
        Narrow(inks[..frontPlanes.Length], limits.FrontMost, limits.FrontTotal, spot);
        Narrow(inks[frontPlanes.Length..], limits.BackMost, limits.BackTotal, spot[frontPlanes.Length..]);
    }

    private static void Narrow(ReadOnlySpan<float> inks, IReadOnlyList<double> most, double total, Span<byte> spot)
    {
        int sum = 0, allowed = (int)Math.Floor((255 * total) + 1e-6);
        for (int ink = 0; ink < inks.Length; ink++)
        {
            spot[ink] = (byte)Math.Min(Math.Round(255 * Math.Clamp(inks[ink], 0f, 1f)), Math.Floor((255 * most[ink]) + 1e-6));
            sum += spot[ink];
        }

        for (; sum > allowed; sum--)
        {
            int give = -1;
            for (int ink = 0; ink < inks.Length; ink++)
            {
                if (spot[ink] > 0 && (give < 0 || spot[ink] - (255 * inks[ink]) > spot[give] - (255 * inks[give])))
                    give = ink;
            }

            spot[give]--;
        }
    }
}
