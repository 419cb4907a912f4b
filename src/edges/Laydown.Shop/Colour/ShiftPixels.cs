using Laydown.Colour.Gamuts;
using Laydown.Colour.Inversion;
using Laydown.Colour.Spaces;

namespace Laydown.Shop.Colour;

/// <summary>Prints the pixels of a picture in thought: bins of near colours are solved once each, and every pixel moves as its bin does.</summary>
internal sealed class ShiftPixels
{
    private const int BinBits = 5;
    private const int Bins = 1 << (3 * BinBits);

    // Well inside the gamut the nearest printable colour is the colour itself.
    private const double SurelyInside = 0.85;
    private static readonly (double Over, byte Red, byte Green, byte Blue)[] Bands = [(6, 122, 20, 60), (4, 214, 84, 40), (2, 245, 190, 70)];

    private readonly PrintModel print;
    private readonly InkInverse inverse;
    private readonly Gamut gamut;

    internal ShiftPixels(PrintModel print, InkLimits limits, BlackPolicy policy)
    {
        this.print = print;
        inverse = new(print.Model, limits, policy, InkWishes.For(print.InkNames));
        gamut = Gamut.Of(print.Model, limits.PerInk, limits.Total);
    }

    /// <summary>The printed picture, the map, and the shift of each pixel.</summary>
    internal (RgbPicture Proof, RgbPicture Map, double[] Shift) Run(RgbPicture picture, CancellationToken cancellation)
    {
        int count = picture.Width * picture.Height;
        (Lab Wanted, Lab Printed)?[] bins = Solve(picture, count, cancellation);
        byte[] proof = new byte[3 * count], map = new byte[3 * count];
        double[] shift = new double[count];
        Parallel.For(0, picture.Height, new ParallelOptions { CancellationToken = cancellation }, row =>
        {
            for (int pixel = row * picture.Width; pixel < (row + 1) * picture.Width; pixel++)
            {
                ReadOnlySpan<byte> rgb = picture.Pixels.AsSpan(3 * pixel, 3);
                (Lab wanted, Lab printed) = bins[Bin(rgb)]!.Value;
                Lab own = LabOf(rgb);
                Lab moved = new(own.L + printed.L - wanted.L, own.A + printed.A - wanted.A, own.B + printed.B - wanted.B);
                shift[pixel] = Ciede2000.Between(own, moved);
                Put(moved, proof.AsSpan(3 * pixel, 3));
                Mark(own, shift[pixel], map.AsSpan(3 * pixel, 3));
            }
        });
        return (new(picture.Width, picture.Height, proof), new(picture.Width, picture.Height, map), shift);
    }

    private (Lab Wanted, Lab Printed)?[] Solve(RgbPicture picture, int count, CancellationToken cancellation)
    {
        (long Red, long Green, long Blue, int Count)[] sums = new (long, long, long, int)[Bins];
        for (int pixel = 0; pixel < count; pixel++)
        {
            ReadOnlySpan<byte> rgb = picture.Pixels.AsSpan(3 * pixel, 3);
            ref (long Red, long Green, long Blue, int Count) sum = ref sums[Bin(rgb)];
            sum = (sum.Red + rgb[0], sum.Green + rgb[1], sum.Blue + rgb[2], sum.Count + 1);
        }

        (Lab Wanted, Lab Printed)?[] bins = new (Lab, Lab)?[Bins];
        Parallel.For(0, Bins, new ParallelOptions { CancellationToken = cancellation }, bin =>
        {
            (long red, long green, long blue, int n) = sums[bin];
            if (n == 0)
                return;
            Lab wanted = LabOf([(byte)(red / n), (byte)(green / n), (byte)(blue / n)]);
            bins[bin] = (wanted, Printed(wanted));
        });
        return bins;
    }

    private Lab Printed(Lab wanted)
    {
        if (gamut.Depth(wanted) < SurelyInside)
            return wanted;
        double[] inks = new double[print.InkNames.Count];
        inverse.Solve(wanted, inks, [.. inverse.EverywhereStarts]);
        return inverse.Predict(inks);
    }

    private static int Bin(ReadOnlySpan<byte> rgb) =>
        (rgb[0] >> (8 - BinBits) << (2 * BinBits)) | (rgb[1] >> (8 - BinBits) << BinBits) | (rgb[2] >> (8 - BinBits));

    // The screen's white is taken for the bare stock, as in any proof on a screen.
    private static Lab LabOf(ReadOnlySpan<byte> rgb) =>
        Lab.From(Bradford.Adapt(Srgb.Decode(rgb[0], rgb[1], rgb[2]), WhitePoints.Srgb, WhitePoints.Pcs), WhitePoints.Pcs);

    private static void Put(Lab colour, Span<byte> rgb) =>
        (rgb[0], rgb[1], rgb[2]) = Srgb.Encode(Bradford.Adapt(colour.ToXyz(WhitePoints.Pcs), WhitePoints.Pcs, WhitePoints.Srgb));

    // The picture as a pale grey, so that one sees where one is, and a band where it moves.
    private static void Mark(Lab own, double shift, Span<byte> rgb)
    {
        foreach ((double over, byte red, byte green, byte blue) in Bands)
        {
            if (shift > over)
            {
                (rgb[0], rgb[1], rgb[2]) = (red, green, blue);
                return;
            }
        }

        byte grey = (byte)(150 + Math.Clamp(own.L, 0, 100));
        (rgb[0], rgb[1], rgb[2]) = (grey, grey, grey);
    }
}
