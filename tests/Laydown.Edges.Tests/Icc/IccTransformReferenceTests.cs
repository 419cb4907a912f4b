using System.Text;
using Laydown.Colour.Spaces;
using Laydown.Formats.Icc;

namespace Laydown.Edges.Tests.Icc;

/// <summary>Our transforms against Little CMS's own command line, against the ICC's reference implementation, and against readers that use our profile.</summary>
public sealed class IccTransformReferenceTests
{
    private const int Colours = 20;

    [Theory]
    [InlineData(IccIntent.Perceptual)]
    [InlineData(IccIntent.RelativeColorimetric)]
    [InlineData(IccIntent.AbsoluteColorimetric)]
    public void Inks_to_Lab_equal_transicc_for_twenty_colours(IccIntent intent)
    {
        using Scratch scratch = new();
        byte[] inks = IccData.Scattered(4 * Colours);
        using IccTransform transform = IccTransform.Between(IccData.Boards, IccProfile.Lab, intent, false).Value;
        Lab[] ours = new Lab[Colours];
        transform.Row(inks, ours);

        List<double[]> theirs = Transicc(Rows(inks.Select(i => i / 2.55), 4), intent, scratch.Profile, "*Lab4");
        for (int i = 0; i < Colours; i++)
        {
            // Both evaluate the same 16-bit table; 16-bit Lab has steps of 0.002 in L* and 0.004 in a*, b*.
            Assert.Equal(theirs[i][0], ours[i].L, tolerance: 0.01);
            Assert.Equal(theirs[i][1], ours[i].A, tolerance: 0.02);
            Assert.Equal(theirs[i][2], ours[i].B, tolerance: 0.02);
        }
    }

    [Theory]
    [InlineData(IccIntent.Perceptual)]
    [InlineData(IccIntent.RelativeColorimetric)]
    public void Lab_to_inks_equals_transicc_for_twenty_colours(IccIntent intent)
    {
        using Scratch scratch = new();
        byte[] scattered = IccData.Scattered(3 * Colours);
        Lab[] labs = [.. Enumerable.Range(0, Colours).Select(i =>
            new Lab(scattered[3 * i] / 2.55, (scattered[(3 * i) + 1] - 128) / 2.0, (scattered[(3 * i) + 2] - 128) / 2.0))];
        using IccTransform transform = IccTransform.Between(IccProfile.Lab, IccData.Boards, intent, false).Value;
        byte[] ours = new byte[4 * Colours];
        transform.Row(labs, ours);

        List<double[]> theirs = Transicc(Rows(labs.SelectMany(l => new[] { l.L, l.A, l.B }), 3), intent, "*Lab4", scratch.Profile);
        for (int i = 0; i < 4 * Colours; i++)
            Assert.Equal(theirs[i / 4][i % 4], ours[i] / 2.55, tolerance: 100.0 / 255);
    }

    [Theory]
    [InlineData(IccIntent.Perceptual)]
    [InlineData(IccIntent.RelativeColorimetric)]
    public void A_free_profile_to_ours_equals_transicc_for_twenty_colours(IccIntent intent)
    {
        using Scratch scratch = new();
        byte[] rgb = IccData.Scattered(3 * Colours);
        IccProfile free = IccProfile.Read("sRGB2014.icc", IccData.FreeSrgbBytes).Value;
        using IccTransform transform = IccTransform.Between(free, IccData.Boards, intent, true).Value;
        byte[] ours = new byte[4 * Colours];
        transform.Row(rgb, ours);

        List<double[]> theirs = Transicc(
            Rows(rgb.Select(v => (double)v), 3), intent, IccData.PathOf("sRGB2014.icc"), scratch.Profile, "-b");

        // For speed our transform goes through one table of 49³ nodes; theirs, told to take none, through both profiles.
        // The inks may then differ by some codes where black is traded for colours; the colours they print must not.
        byte[] rounded = [.. theirs.SelectMany(v => v.Take(4)).Select(v => (byte)Math.Round(2.55 * v))];
        Lab[] seen = new Lab[Colours], wanted = new Lab[Colours];
        using IccTransform back = IccTransform.Between(IccData.Boards, IccProfile.Lab, IccIntent.RelativeColorimetric, false).Value;
        back.Row(ours, seen);
        back.Row(rounded, wanted);
        for (int i = 0; i < Colours; i++)
            Assert.True(Ciede2000.Between(wanted[i], seen[i]) < 1, Invariant($"{rgb[3 * i]} {rgb[(3 * i) + 1]} {rgb[(3 * i) + 2]}"));
        for (int i = 0; i < 4 * Colours; i++)
            Assert.Equal(theirs[i / 4][i % 4], ours[i] / 2.55, tolerance: 3.0);
    }

    [Fact]
    public void A_free_profile_to_Lab_equals_the_ICC_reference_implementation()
    {
        // The vectors that 8 bits can hold: 0, 0.2 … 1 in each channel.
        (double[] In, double[] Out)[] vectors = [.. IccData.Vectors("sRGB2014_ToPcs_ICC-1.csv")
            .Where(v => v.In.All(c => c is >= 0 and <= 1 && Math.Abs((255 * c) - Math.Round(255 * c)) < 1e-9))];
        byte[] rgb = [.. vectors.SelectMany(v => v.In).Select(c => (byte)Math.Round(255 * c))];
        using IccTransform transform = IccTransform.Between(
            IccProfile.Read("sRGB2014.icc", IccData.FreeSrgbBytes).Value, IccProfile.Lab, IccIntent.RelativeColorimetric, false).Value;
        Lab[] ours = new Lab[vectors.Length];
        transform.Row(rgb, ours);
        Assert.Equal(216, vectors.Length);
        for (int i = 0; i < vectors.Length; i++)
        {
            double[] xyz = vectors[i].Out;
            Lab theirs = Lab.From(new(100 * xyz[0], 100 * xyz[1], 100 * xyz[2]), WhitePoints.Pcs);

            // Curves of 1024 entries and matrices of 16 bits: a twentieth of a unit is their rounding in the darks.
            Assert.True(Ciede2000.Between(theirs, ours[i]) < 0.05, Invariant($"{vectors[i].In[0]} {vectors[i].In[1]} {vectors[i].In[2]}"));
        }
    }

    [Fact]
    public void Vips_prints_through_our_profile_as_we_do()
    {
        using Scratch scratch = new();
        byte[] rgb = IccData.Scattered(3 * Colours), ours = new byte[4 * Colours];
        using IccTransform transform = IccTransform.Between(IccProfile.Srgb, IccData.Boards, IccIntent.RelativeColorimetric, false).Value;
        transform.Row(rgb, ours);
        using NetVips.Image source = NetVips.Image.NewFromMemoryCopy(rgb, Colours, 1, 3, NetVips.Enums.BandFormat.Uchar)
            .Copy(interpretation: NetVips.Enums.Interpretation.Srgb);
        using NetVips.Image printed = source.IccTransform(
            scratch.Profile, inputProfile: "srgb", intent: NetVips.Enums.Intent.Relative, blackPointCompensation: false);
        byte[] theirs = printed.WriteToMemory<byte>();
        Assert.Equal(ours.Length, theirs.Length);

        // Its sRGB and its 33³ table are not ours: 3 codes of 255.
        for (int i = 0; i < ours.Length; i++)
            Assert.InRange(theirs[i], ours[i] - 3, ours[i] + 3);
    }

    [Fact]
    public void Ghostscript_prints_through_our_profile_as_we_do()
    {
        using Scratch scratch = new();
        byte[] rgb = [51, 102, 153], ours = new byte[4];
        using IccTransform transform = IccTransform.Between(IccProfile.Srgb, IccData.Boards, IccIntent.RelativeColorimetric, false).Value;
        transform.Row(rgb, ours);
        string page = Path.Combine(scratch.Folder, "page.tif");
        OutsideProgram.Run(
            "gs", "", "-q", "-dSAFER", "-dBATCH", "-dNOPAUSE", "-sDEVICE=tiff32nc", Invariant($"--permit-file-read={scratch.Profile}"),
            Invariant($"-sOutputICCProfile={scratch.Profile}"), "-dRenderIntent=1", "-dBlackPtComp=0", "-r10", "-g10x10", Invariant($"-sOutputFile={page}"),
            "-c", "0.2 0.4 0.6 setrgbcolor 0 0 100 100 rectfill showpage");
        using BitMiracle.LibTiff.Classic.Tiff tiff = BitMiracle.LibTiff.Classic.Tiff.Open(page, "r");
        byte[] row = new byte[tiff.ScanlineSize()];
        Assert.True(tiff.ReadScanline(row, 5));
        for (int ink = 0; ink < 4; ink++)
            Assert.InRange(row[20 + ink], ours[ink] - 3, ours[ink] + 3);
    }

    private static List<double[]> Transicc(string input, IccIntent intent, string from, string to, params string[] more) =>
    [
        .. OutsideProgram.Run("transicc", input, [Invariant($"-t{(int)intent}"), "-c0", "-n", .. more, "-i", from, "-o", to])
            .Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => IccData.Numbers(l, ' ')).Where(v => v.Length >= 3),
    ];

    private static string Rows(IEnumerable<double> values, int width)
    {
        StringBuilder text = new();
        foreach (double[] row in values.Chunk(width))
            text.AppendJoin(' ', row.Select(v => Invariant($"{v:R}"))).Append('\n');
        return text.ToString();
    }

    private sealed class Scratch : IDisposable
    {
        public Scratch() => File.WriteAllBytes(Profile, IccData.BoardsBytes);

        public string Folder { get; } = Directory.CreateTempSubdirectory("laydown-test-").FullName;

        public string Profile => Path.Combine(Folder, "hybrid-boards.icc");

        public void Dispose() => Directory.Delete(Folder, recursive: true);
    }
}
