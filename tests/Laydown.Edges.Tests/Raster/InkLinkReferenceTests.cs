using Laydown.Colour.Inversion;
using Laydown.Colour.Spaces;
using Laydown.Formats.Icc;
using Laydown.Raster.Separation;
using Laydown.Raster.Tiles;

namespace Laydown.Edges.Tests.Raster;

/// <summary>Links beside Little CMS in 16 bits, every step of its pipeline run for every pixel (no table of its own).</summary>
public sealed class InkLinkReferenceTests
{
    private const int Inks = 7, Pixels = 200_000;
    private static readonly string[] Names = ["Cyan", "Magenta", "Yellow", "Black", "Orange", "Green", "Violet"];
    private static readonly Lazy<IccProfile> Print = new(() => IccProfile.Read("sharp.icc", SharpBlack()).Value);

    /// <summary>
    /// What a table misses of a print whose black starts sharply, over 200 000 colours without order; the figures are measured and stated here, so that no one
    /// takes 33³ for exact. Little CMS's own table of as many nodes misses as much: the table is at fault, not its reading.
    /// </summary>
    [Theory]
    [InlineData(33, 0.296, 9.6)]
    [InlineData(65, 0.098, 4.5)]
    public void A_table_misses_as_much_as_Little_CMS_with_as_many_nodes(int steps, double rms, double most)
    {
        using IccTransform exact = Little(null), own = Little(steps);
        ushort[] source = Chance(3 * Pixels), wanted = new ushort[Inks * Pixels], thinned = new ushort[Inks * Pixels];
        exact.Row(source, wanted);
        own.Row(source, thinned);
        (double oursRms, double oursMost) = Error(Through(Table(steps, exact), source), wanted);
        (double theirsRms, double theirsMost) = Error(thinned, wanted);
        string seen = Invariant($"ours rms {oursRms:0.000}, max {oursMost:0.0}; Little CMS rms {theirsRms:0.000}, max {theirsMost:0.0} of 255");
        Assert.True(Math.Abs(oursRms - rms) < 0.001 && Math.Abs(oursMost - most) < 0.1, seen);
        Assert.True(Math.Abs(oursRms - theirsRms) < 0.001 && Math.Abs(oursMost - theirsMost) < 0.1, seen);
    }

    /// <summary>The same nodes read by both. Ours lie within 13 codes of 65535 of double arithmetic, Little CMS rounds inks to a code; between a curve and the table it
    /// rounds to 16 bits too, half a code times the cells for each of three channels where neighbouring nodes lie bare and full.</summary>
    [Theory]
    [InlineData(9, 1)]
    [InlineData(33, 1)]
    [InlineData(17, 1.4)]
    public void Reads_a_device_link_as_Little_CMS_does(int steps, double bend)
    {
        Random chance = new(steps);
        float[] curve = bend == 1 ? [0, 1] : [.. Enumerable.Range(0, 1025).Select(i => (float)(Math.Round(Math.Pow(i / 1024.0, 1 / bend) * 65535) / 65535))];
        LinkTables link = new(
            3, Names, [.. Enumerable.Repeat<IReadOnlyList<float>>(curve, 3)], steps,
            [.. Enumerable.Range(0, steps * steps * steps * Inks).Select(_ => chance.Next(65536) / 65535f)]);
        IccProfile profile = IccProfile.Read("link.icc", DeviceLinkProfile.Write(link, "link, invented", "none", "RGB", "inks")).Value;
        using IccTransform exact = IccTransform.Codes(profile, null, IccIntent.Perceptual, false, null).Value;
        ushort[] source = Chance(3 * Pixels), wanted = new ushort[Inks * Pixels];
        exact.Row(source, wanted);
        ushort[] ours = Through(link, source);
        Assert.Equal(0, wanted.Zip(ours).Max(p => Math.Abs(p.First - p.Second)), 14 + (bend == 1 ? 0 : 1.5 * (steps - 1)));
    }

    [Fact]
    public void The_grid_chosen_by_error_meets_its_wish_on_other_pixels_too()
    {
        using IccTransform exact = IccTransform.Precise(IccProfile.Srgb, Print.Value, IccIntent.RelativeColorimetric, true).Value;
        LinkGrid grid = LinkGrid.Smallest(
            3, Names, exact.Row, new([17, 33, 65], [1, 1.4], 0.3, 20, 50_000), TestContext.Current.CancellationToken);
        Assert.True(grid.MeetsWish && grid.Table.Steps == 65, Invariant($"{grid.Table.Steps}, bend {grid.Bend}: {grid.RmsError:0.000}, {grid.MaxError:0.0}"));
        using IccTransform codes = Little(null);
        ushort[] source = Chance(3 * Pixels), wanted = new ushort[Inks * Pixels];
        codes.Row(source, wanted);

        // Other pixels, four times as many and none of them grey: the mean stays, the largest may be found a little larger.
        (double rms, double most) = Error(Through(grid.Table, source), wanted);
        Assert.Equal(grid.RmsError, rms, 0.1 * rms);
        Assert.InRange(most, 0, 20);
    }

    private static IccTransform Little(int? nodes) => IccTransform.Codes(IccProfile.Srgb, Print.Value, IccIntent.RelativeColorimetric, true, nodes).Value;

    private static LinkTables Table(int steps, IccTransform exact)
    {
        int nodes = steps * steps * steps;
        ushort[] places = new ushort[3 * nodes], found = new ushort[Inks * nodes];
        for (int node = 0; node < nodes; node++)
        {
            for (int channel = 2, rest = node; channel >= 0; channel--, rest /= steps)
                places[(3 * node) + channel] = (ushort)Math.Round(rest % steps * 65535.0 / (steps - 1));
        }

        exact.Row(places, found);
        float[] straight = [0, 1];
        return new(3, Names, [straight, straight, straight], steps, [.. found.Select(f => f / 65535f)]);
    }

    private static ushort[] Through(LinkTables link, ushort[] source)
    {
        int pixels = source.Length / 3;
        Tile from = new(3, 1, pixels), to = new(Inks, 1, pixels);
        for (int i = 0; i < source.Length; i++)
            from.Row(i % 3, 0)[i / 3] = source[i];
        new InkLink(link).Run(from, to);
        ushort[] found = new ushort[Inks * pixels];
        for (int ink = 0; ink < Inks; ink++)
        {
            for (int x = 0; x < pixels; x++)
                found[(x * Inks) + ink] = to.Row(ink, 0)[x];
        }

        return found;
    }

    private static (double Rms, double Most) Error(ushort[] seen, ushort[] wanted)
    {
        double squares = 0, most = 0;
        for (int i = 0; i < seen.Length; i++)
        {
            double error = Math.Abs(seen[i] - wanted[i]) / 257.0;
            squares += error * error;
            most = Math.Max(most, error);
        }

        return (Math.Sqrt(squares / seen.Length), most);
    }

    private static ushort[] Chance(int count)
    {
        Random chance = new(12);
        return [.. Enumerable.Range(0, count).Select(_ => (ushort)chance.Next(65536))];
    }

    // Invented: black starts sharply in the dark half and takes the place of the others, light colours have none.
    private static byte[] SharpBlack()
    {
        InverseAxes axes = InverseAxes.Even(33);
        List<float> back = [];
        foreach (double l in axes.L)
        {
            foreach (double a in axes.A)
            {
                foreach (double b in axes.B)
                    back.AddRange(InksOf(1 - (l / 100), a / 110, b / 110));
            }
        }

        Lab[] forward = [.. Enumerable.Range(0, 1 << Inks).Select(i => new Lab(100 - (13 * System.Numerics.BitOperations.PopCount((uint)i)), 0, 0))];
        ProfileTables tables = new(new(84, 87, 71), Inks, 2, forward, axes, back, back, new float[33 * 33 * 33]);
        return OutputProfile.Write(tables, "sharp black, invented", "none", OutputProfileOptions.Usual with { Edition = IccEdition.V4, InkNames = Names });
    }

    private static IEnumerable<float> InksOf(double dark, double a, double b)
    {
        double c = dark - (a * 0.6), m = dark + (a * 0.6) - (b * 0.2), y = dark + (b * 0.7), grey = Math.Clamp(Math.Min(c, Math.Min(m, y)), 0, 1);
        double black = grey < 0.5 ? 0 : Math.Min(1, (grey - 0.5) * 4), left = 1 - (0.8 * black);
        return new[] { c * left, m * left, y * left, black, Math.Min(a, b), Math.Min(-a, b), -b }.Select(i => (float)Math.Clamp(i, 0, 1));
    }
}
