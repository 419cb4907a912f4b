using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Formats.Icc;

/// <summary>Runs an input, display, output or space profile in double precision, without Little CMS. [ICC1]</summary>
/// <remarks>
/// Edition 2 and 4: gray and matrix curves, lut8, lut16, lutAToB, lutBToA; multilinear in any number of channels. A missing table
/// falls back on that of the perceptual intent. Perceptual of edition 2 is fitted to edition 4's black; absolute goes by the media white.
/// </remarks>
public sealed class IccEvaluator
{
    private const double XyzScale = 32768.0 / 65535;

    // White and perceptual black of the connection space. [ICC1]
    private static readonly double[] White = [0.9642, 1, 0.8249], Black = [0.00336, 0.0034731, 0.00287];

    private readonly bool oldEdition;
    private readonly double[] media;
    private readonly Dictionary<string, LutPipeline> luts = [];
    private readonly CurveStage[] curves;
    private readonly double[] matrix, inverse;

    private IccEvaluator(TagTable tags)
    {
        if (tags.Class is not ("scnr" or "mntr" or "prtr" or "spac"))
            throw new TagFaultException("header", Invariant($"class {tags.Class}"), "scnr, mntr, prtr or spac");
        Channels = TagTable.Channels(tags.Space);
        if (Channels == 0 || tags.Connection is not ("Lab " or "XYZ "))
            throw new TagFaultException("header", Invariant($"{tags.Space} to {tags.Connection}"), "Gray, RGB, CMYK, Lab, XYZ or 3 to 8 inks to Lab or XYZ");
        IsXyz = tags.Connection == "XYZ ";
        oldEdition = tags.Edition < 4;
        media = tags.Has("wtpt") ? tags.Xyz("wtpt") : [.. White];
        if (media.Any(v => v <= 0))
            throw new TagFaultException("wtpt", "a value of 0 or less", "values over 0");
        foreach (string tag in new[] { "A2B0", "A2B1", "A2B2", "B2A0", "B2A1", "B2A2" }.Where(tags.Has))
            luts[tag] = LutPipeline.Read(tags, tag, tag[0] == 'A' ? Channels : 3, tag[0] == 'A' ? 3 : Channels, tag[0] == 'B' && IsXyz);

        (curves, matrix, inverse) = luts.Count > 0 ? ([], [], []) : Shaper(tags);
    }

    /// <summary>Channels of the device side.</summary>
    public int Channels { get; }

    /// <summary>Whether the connection space is XYZ (Y of white = 1) and not Lab.</summary>
    public bool IsXyz { get; }

    /// <summary>Takes a profile.</summary>
    /// <param name="file">Name for messages.</param>
    /// <param name="bytes">The whole profile, hostile or not.</param>
    /// <returns>The evaluator, or the tag that is wrong.</returns>
    public static Reading<IccEvaluator> Read(string file, ReadOnlyMemory<byte> bytes)
    {
        try
        {
            return Reading.Of(new IccEvaluator(new(bytes.ToArray())));
        }
        catch (TagFaultException fault)
        {
            return Reading.Refused<IccEvaluator>(new InputFault(file, null, "ICC " + fault.Tag.Trim(), fault.Found, fault.Wanted));
        }
    }

    /// <summary>Colour of the connection space, Lab or XYZ as <see cref="IsXyz"/> tells.</summary>
    /// <param name="device">One for each channel, 0 to 1.</param>
    /// <param name="intent">Rendering intent.</param>
    /// <exception cref="ArgumentException">Another number of channels, or no table for this direction.</exception>
    public double[] ToPcs(ReadOnlySpan<double> device, IccIntent intent)
    {
        Require(device.Length == Channels, device.Length, Channels);
        double[] pcs = luts.Count == 0 ? ThroughShaper(device) : ThroughLut(Lut('A', intent), device);
        return Adjusted(pcs, intent, forward: true);
    }

    /// <summary>Lab under D50.</summary>
    /// <inheritdoc cref="ToPcs"/>
    public Lab ToLab(ReadOnlySpan<double> device, IccIntent intent)
    {
        double[] pcs = ToPcs(device, intent);
        return IsXyz ? Lab.From(new(100 * pcs[0], 100 * pcs[1], 100 * pcs[2]), WhitePoints.Pcs) : new(pcs[0], pcs[1], pcs[2]);
    }

    /// <summary>Device values of a colour of the connection space.</summary>
    /// <param name="pcs">Lab or XYZ as <see cref="IsXyz"/> tells.</param>
    /// <param name="intent">Rendering intent.</param>
    /// <returns>One for each channel; 0 to 1, beyond only where a profile's formulas lead there.</returns>
    /// <exception cref="ArgumentException">Not three values, or no table for this direction.</exception>
    public double[] ToDevice(ReadOnlySpan<double> pcs, IccIntent intent)
    {
        Require(pcs.Length == 3, pcs.Length, 3);
        double[] colour = Adjusted(pcs.ToArray(), intent, forward: false);
        if (luts.Count == 0)
            return BackThroughShaper(colour);
        LutPipeline lut = Lut('B', intent);
        return lut.Run(Encode(colour, lut));
    }

    private static (CurveStage[] Curves, double[] Matrix, double[] Inverse) Shaper(TagTable tags)
    {
        CurveStage Curve(string tag) => CurveStage.Read(tag, tags.Tag(tag).Span, out _);
        if (tags.Space == "GRAY")
            return ([Curve("kTRC")], [], []);
        if (tags.Space != "RGB " || tags.Connection != "XYZ ")
            throw new TagFaultException("A2B0", "no such tag", "a table, as only gray and RGB go without");
        double[][] columns = [tags.Xyz("rXYZ"), tags.Xyz("gXYZ"), tags.Xyz("bXYZ")];
        double[] m = [.. Enumerable.Range(0, 9).Select(i => columns[i % 3][i / 3])];
        return ([Curve("rTRC"), Curve("gTRC"), Curve("bTRC")], m, Inverted(m));
    }

    private static double[] Inverted(double[] m)
    {
        double Minor(int r, int c)
        {
            int r1 = (r + 1) % 3, r2 = (r + 2) % 3, c1 = (c + 1) % 3, c2 = (c + 2) % 3;
            return (m[(3 * r1) + c1] * m[(3 * r2) + c2]) - (m[(3 * r1) + c2] * m[(3 * r2) + c1]);
        }

        double whole = (m[0] * Minor(0, 0)) + (m[1] * Minor(0, 1)) + (m[2] * Minor(0, 2));
        if (Math.Abs(whole) < 1e-9)
            throw new TagFaultException("rXYZ", "primaries on one line", "three that span a space");
        return [.. Enumerable.Range(0, 9).Select(i => Minor(i % 3, i / 3) / whole)];
    }

    private static double[] Times(double[] m, double[] v) =>
        [.. Enumerable.Range(0, 3).Select(r => (m[3 * r] * v[0]) + (m[(3 * r) + 1] * v[1]) + (m[(3 * r) + 2] * v[2]))];

    private static void Require(bool holds, int found, int wanted)
    {
        if (!holds)
            throw new ArgumentException(Invariant($"{found} values: wanted {wanted}."));
    }

    private LutPipeline Lut(char from, IccIntent intent)
    {
        string stem = from == 'A' ? "A2B" : "B2A", wanted = stem + (intent == IccIntent.AbsoluteColorimetric ? 1 : (int)intent);
        return luts.TryGetValue(wanted, out LutPipeline? lut) || luts.TryGetValue(stem + "0", out lut)
            ? lut
            : throw new ArgumentException(Invariant($"Profile without {stem} tables: no way in this direction."), nameof(intent));
    }

    private double[] ThroughShaper(ReadOnlySpan<double> device)
    {
        double[] light = new double[device.Length];
        for (int i = 0; i < light.Length; i++)
            light[i] = curves[i].At(device[i]);
        return Channels == 3 ? Times(matrix, light) : IsXyz ? [.. White.Select(w => w * light[0])] : [100 * light[0], 0, 0];
    }

    private double[] BackThroughShaper(double[] colour)
    {
        double[] light = Channels == 3 ? Times(inverse, colour) : [IsXyz ? colour[1] : colour[0] / 100];
        return [.. light.Select((l, i) => curves[i].Inverse(l))];
    }

    private double[] ThroughLut(LutPipeline lut, ReadOnlySpan<double> device)
    {
        double[] v = lut.Run(device.ToArray());
        if (IsXyz)
            return [.. v.Select(x => x / XyzScale)];
        return lut.Type == "mft2"
            ? [v[0] * 65535 / 652.8, (v[1] * 65535 / 256) - 128, (v[2] * 65535 / 256) - 128]
            : [v[0] * 100, (v[1] * 255) - 128, (v[2] * 255) - 128];
    }

    private double[] Encode(double[] colour, LutPipeline lut)
    {
        if (IsXyz)
            return [.. colour.Select(x => x * XyzScale)];
        return lut.Type == "mft2"
            ? [colour[0] * 652.8 / 65535, (colour[1] + 128) * 256 / 65535, (colour[2] + 128) * 256 / 65535]
            : [colour[0] / 100, (colour[1] + 128) / 255, (colour[2] + 128) / 255];
    }

    private double[] Adjusted(double[] pcs, IccIntent intent, bool forward)
    {
        bool absolute = intent == IccIntent.AbsoluteColorimetric, black = intent == IccIntent.Perceptual && oldEdition;
        if (!absolute && !black)
            return pcs;
        double[] xyz = IsXyz ? pcs : ToXyz(pcs);
        for (int i = 0; i < 3; i++)
        {
            double scale = absolute ? media[i] / White[i] : 1 - (Black[i] / White[i]), shift = absolute ? 0 : Black[i];
            xyz[i] = forward ? (xyz[i] * scale) + shift : Math.Max(0, (xyz[i] - shift) / scale);
        }

        return IsXyz ? xyz : ToLabValues(xyz);
    }

    private static double[] ToXyz(double[] lab)
    {
        double f = (lab[0] + 16) / 116;
        return [White[0] * Uncube(f + (lab[1] / 500)), White[1] * Uncube(f), White[2] * Uncube(f - (lab[2] / 200))];
    }

    private static double[] ToLabValues(double[] xyz)
    {
        double x = Cube(xyz[0] / White[0]), y = Cube(xyz[1] / White[1]), z = Cube(xyz[2] / White[2]);
        return [(116 * y) - 16, 500 * (x - y), 200 * (y - z)];
    }

    private static double Cube(double t) => t > 216.0 / 24389 ? Math.Cbrt(t) : ((t * 24389 / 27) + 16) / 116;

    // No light is less than none: colours below black are cut at black.
    private static double Uncube(double f) => f > 6.0 / 29 ? f * f * f : Math.Max(0, ((116 * f) - 16) * 27 / 24389);
}
