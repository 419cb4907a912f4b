using System.Runtime.Intrinsics;
using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;
using Laydown.Optics.Layers;
using V = System.Runtime.Intrinsics.Vector256<float>;

namespace Laydown.Optics.Looks;

/// <summary>The fast way of <see cref="StackLook"/>: the same formulas for eight bands at once in single precision, inks from tables
/// of 256 coverages.</summary>
internal sealed class LookRow
{
    private const int Lanes = 8;
    private const int Padded = 40;
    private const int Blocks = Padded / Lanes;
    private const int GammaSteps = 8192;

    // S·X at which the share of straight light is 1e-4.
    private const float NoShareFrom = 7.2f;

    private readonly StackOptics optics;
    private readonly float[][] once, twice;
    private readonly float[]?[] scatter;
    private readonly bool[] isWhite;
    private readonly RowHalftone?[] turbid;
    private readonly float[] sheetReflectance, sheetTransmittance, sheetScatter, sheetStraight, fromRoom, fromLamp;
    private readonly byte[] gamma;
    private readonly int[] firstInk;

    internal LookRow(StackOptics optics, SpectralWeights room, double roomScale, SpectralWeights lamp, double lampScale, Xyz white)
        : this(optics, Primaries(room, roomScale, white), Primaries(lamp, lampScale, white))
    {
    }

    private LookRow(StackOptics optics, float[] fromRoom, float[] fromLamp)
    {
        this.optics = optics;
        firstInk = [.. Enumerable.Range(0, optics.Layers.Count).Select(optics.FirstInk)];
        LookInk[] inks = [.. optics.Layers.SelectMany(l => l.Inks)];
        once = [.. inks.Select((ink, i) => Table((band, a) =>
            ink.IsWhite ? StackOptics.White(ink, band, a).FrontReflectance : optics.Film(i, band, a).Once))];
        twice = [.. inks.Select((ink, i) => Table((band, a) =>
            ink.IsWhite ? StackOptics.White(ink, band, a).Inward : optics.Film(i, band, a).Twice))];
        isWhite = [.. inks.Select(ink => ink.IsWhite)];
        scatter = [.. inks.Select(ink => ink.Scatters ? Line(band => ink.Scatter[band] / 255) : null)];
        turbid = [.. firstInk.Select((_, layer) => optics.Turbid(layer) is { } bands ? new RowHalftone(bands, Padded) : null)];
        sheetReflectance = Line(band => optics.Sheet.Inside[band].FrontReflectance);
        sheetTransmittance = Line(band => optics.Sheet.Inside[band].Inward);
        sheetScatter = Line(band => optics.Sheet.Scatter[band]);
        sheetStraight = Line(band => optics.Sheet.Straight[band]);
        (this.fromRoom, this.fromLamp) = (fromRoom, fromLamp);
        gamma = [.. Enumerable.Range(0, GammaSteps + 1).Select(i => Srgb.EncodeChannel((double)i / GammaSteps * ((double)i / GammaSteps)))];
    }

    /// <summary>One that tells tristimulus values, 100 for the perfect diffuser and for the lamp itself, in place of a screen's
    /// primaries; for <see cref="Apart"/> alone.</summary>
    internal static LookRow OfTristimulus(StackOptics optics, SpectralWeights room, SpectralWeights lamp) => new(
        optics, Three(room, light => light), Three(lamp, light => light));

    /// <summary>Fills a row; lengths have been checked.</summary>
    internal void Run(ReadOnlySpan<byte> coverages, int width, Span<byte> rgb)
    {
        Span<byte> spot = stackalloc byte[optics.InkCount], last = stackalloc byte[optics.InkCount];
        for (int x = 0; x < width; x++)
        {
            for (int ink = 0; ink < spot.Length; ink++)
                spot[ink] = coverages[(ink * width) + x];

            // Neighbours are often equal: then so is what is seen.
            if (x > 0 && spot.SequenceEqual(last))
            {
                rgb.Slice((x - 1) * 3, 3).CopyTo(rgb[(x * 3)..]);
                continue;
            }

            Spot(spot, rgb.Slice(x * 3, 3));
            spot.CopyTo(last);
        }
    }

    private void Spot(ReadOnlySpan<byte> spot, Span<byte> rgb)
    {
        Span<float> sums = stackalloc float[3];
        for (int block = 0; block < Padded; block += Lanes)
        {
            (V r, V t) = BandsOf(spot, block);
            for (int primary = 0; primary < 3; primary++)
                sums[primary] += Vector256.Sum((r * At(fromRoom, primary, block)) + (t * At(fromLamp, primary, block)));
        }

        // The table is even in the square root of the light, so that the darks are as fine as the lights.
        for (int primary = 0; primary < 3; primary++)
            rgb[primary] = gamma[(int)MathF.Round(MathF.Sqrt(Math.Clamp(sums[primary], 0, 1)) * GammaSteps)];
    }

    /// <summary>What the room's light and the lamp's give at one spot, each in the screen's primaries (3 values) and apart from the
    /// other; not clipped.</summary>
    internal void Apart(ReadOnlySpan<byte> spot, Span<float> room, Span<float> lamp)
    {
        room.Clear();
        lamp.Clear();
        for (int block = 0; block < Padded; block += Lanes)
        {
            (V r, V t) = BandsOf(spot, block);
            for (int primary = 0; primary < 3; primary++)
            {
                room[primary] += Vector256.Sum(r * At(fromRoom, primary, block));
                lamp[primary] += Vector256.Sum(t * At(fromLamp, primary, block));
            }
        }
    }

    private (V Reflectance, V Transmittance) BandsOf(ReadOnlySpan<byte> spot, int block)
    {
        V share = Share(spot, block);
        (V r, V t) = Spread(spot, block);
        if (V.Zero != share)
        {
            (V slabR, V slabT) = Slab(spot, block);
            r += share * (slabR - r);
            t += share * (slabT - t);
        }

        return (r + Vector256.Create((float)(optics.Sheet.GlossSeen * Boundary.Ink.At45)), t);
    }

    private V Share(ReadOnlySpan<byte> spot, int block)
    {
        V sum = At(sheetScatter, 0, block);
        for (int ink = 0; ink < spot.Length; ink++)
        {
            if (scatter[ink] is { } line && spot[ink] != 0)
                sum += At(line, 0, block) * spot[ink];
        }

        // Under a full white the share is far below one code of the screen.
        if (Vector256.GreaterThanAll(sum, Vector256.Create(NoShareFrom)))
            return V.Zero;
        V share = V.Zero;
        for (int lane = 0; lane < Lanes; lane++)
            share = share.WithElement(lane, (float)StraightShare.Of(sum[lane]));
        return share;
    }

    private (V Once, V Twice) Films(IReadOnlyList<int> places, ReadOnlySpan<byte> spot, int block)
    {
        V one = V.One, two = V.One;
        for (int i = 0; i < places.Count; i++)
        {
            int first = firstInk[places[i]], end = first + optics.Layers[places[i]].Inks.Count;
            for (int ink = first; ink < end; ink++)
            {
                // A bare ink changes nothing; most inks of a spot are bare.
                if (spot[ink] == 0)
                    continue;
                one *= At(once[ink], spot[ink], block);
                two *= At(twice[ink], spot[ink], block);
            }
        }

        return (one, two);
    }

    private (V Reflectance, V Transmittance) Spread(ReadOnlySpan<byte> spot, int block)
    {
        Boundary surface = Boundary.Ink;
        V inside = Vector256.Create((float)surface.DiffuseInside);
        (V f, V f2) = Films(optics.Front, spot, block);
        (V b, V b2) = Films(optics.Back, spot, block);

        // Adding method from the viewer inward; layers are equal both ways, so one transmittance is enough.
        V front = V.Zero, back = V.Zero, through = V.One;
        for (int i = 0; i < optics.Middle.Count; i++)
            AddPart(optics.Middle[i], spot, block, ref front, ref back, ref through);

        V r1 = inside * f2, far = inside * b2;
        float box = (float)(surface.OutDiffuse * surface.InDiffuse * optics.Backing / (1 - (optics.Backing * surface.DiffuseOutside)));
        V behind = far + (b * b * box);
        V seen = front + (through * through * behind / (V.One - (back * behind)));
        V reflectance = f * f * seen * (float)(surface.InFrom45 * surface.OutNormal) / (V.One - (r1 * seen));
        V loop = ((V.One - (front * r1)) * (V.One - (back * far))) - (through * through * r1 * far);
        return (reflectance, f * b * through * (float)(surface.InDiffuse * surface.OutNormal) / loop);
    }

    private void AddPart(int place, ReadOnlySpan<byte> spot, int block, ref V front, ref V back, ref V through)
    {
        if (place == StackOptics.SheetPlace)
        {
            Add(At(sheetReflectance, 0, block), At(sheetTransmittance, 0, block), ref front, ref back, ref through);
            return;
        }

        int first = firstInk[place], end = first + optics.Layers[place].Inks.Count;
        bool white = optics.Layers[place].IsWhite;
        if (turbid[place] is { } halftone)
        {
            (V r, V t) = halftone.At(spot[first..end], block);
            Add(r, t, ref front, ref back, ref through);
            return;
        }

        for (int ink = first; ink < end; ink++)
        {
            V one = At(once[ink], spot[ink], block);
            if (white)
                Add(one, At(twice[ink], spot[ink], block), ref front, ref back, ref through);
            else
                Add(V.Zero, one, ref front, ref back, ref through);
        }
    }

    private static void Add(V reflectance, V transmittance, ref V front, ref V back, ref V through)
    {
        V escaping = V.One / (V.One - (back * reflectance));
        front += through * through * reflectance * escaping;
        back = reflectance + (transmittance * transmittance * back * escaping);
        through *= transmittance * escaping;
    }

    private (V Reflectance, V Transmittance) Slab(ReadOnlySpan<byte> spot, int block)
    {
        V t = At(sheetStraight, 0, block);
        for (int ink = 0; ink < spot.Length; ink++)
        {
            if (!isWhite[ink] && spot[ink] != 0)
                t *= At(once[ink], spot[ink], block);
        }

        V slanted = Through((float)Boundary.Ink.At45, t), upright = Through((float)Boundary.Ink.Normal, t);
        V back = V.Zero;
        for (int lane = 0; lane < Lanes; lane++)
            back = back.WithElement(lane, SlabBack(t[lane]));
        return (slanted * upright * (float)optics.Backing / (V.One - (back * (float)optics.Backing)), upright);
    }

    private static float SlabBack(float t)
    {
        float at = t * 64;
        int below = Math.Min((int)at, 63);
        double low = StackOptics.SlabReflectance[below];
        return (float)(low + ((at - below) * (StackOptics.SlabReflectance[below + 1] - low)));
    }

    private static V Through(float r, V t) => t * ((1 - r) * (1 - r)) / (V.One - (t * t * (r * r)));

    private static V At(float[] table, int line, int block) => Vector256.Create<float>(table.AsSpan((line * Padded) + block, Lanes));

    private static float[] Line(Func<int, double> value)
    {
        float[] line = new float[Padded];
        for (int band = 0; band < Bands.Count; band++)
            line[band] = (float)value(band);
        return line;
    }

    private static float[] Table(Func<int, double, double> value)
    {
        float[] table = new float[256 * Padded];
        for (int code = 0; code < 256; code++)
        {
            for (int band = 0; band < Bands.Count; band++)
                table[(code * Padded) + band] = (float)value(band, code / 255.0);
        }

        return table;
    }

    // Light of each band goes straight to the screen's primaries: weights, scale, adaptation and matrix in one.
    private static float[] Primaries(SpectralWeights weights, double scale, Xyz white) => Three(weights, light =>
    {
        Xyz scaled = light.Times(scale * 100 / white.Y);
        (double red, double green, double blue) = Srgb.Linear(Bradford.Adapt(scaled, white.Times(100 / white.Y), WhitePoints.Srgb));
        return new(red, green, blue);
    });

    private static float[] Three(SpectralWeights weights, Func<Xyz, Xyz> turn)
    {
        float[] table = new float[3 * Padded];
        for (int band = 0; band < Bands.Count; band++)
        {
            Xyz three = turn(new(weights.X[band], weights.Y[band], weights.Z[band]));
            (table[band], table[Padded + band], table[(2 * Padded) + band]) = ((float)three.X, (float)three.Y, (float)three.Z);
        }

        return table;
    }
}
