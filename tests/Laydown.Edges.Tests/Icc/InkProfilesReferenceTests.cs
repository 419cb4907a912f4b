using System.Text;
using Laydown.Formats.Icc;

namespace Laydown.Edges.Tests.Icc;

/// <summary>Our profiles of 4, 6 and 7 inks in programs that are not ours, and our evaluator beside them.</summary>
public sealed class InkProfilesReferenceTests : IDisposable
{
    private const int Colours = 200;

    private readonly string folder = Directory.CreateTempSubdirectory("laydown-test-").FullName;

    public static TheoryData<int, IccEdition> All => new MatrixTheoryData<int, IccEdition>([4, 6, 7], [IccEdition.V2, IccEdition.V4]);

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory, MemberData(nameof(All))]
    public void Inks_to_Lab_equal_transicc(int inks, IccEdition edition)
    {
        string path = Profile(inks, edition, out byte[] bytes);
        double[] mix = [.. IccData.Scattered(inks * Colours).Select(i => i / 255.0)];
        List<double[]> theirs = Transicc(Rows(mix.Select(i => i * 100), inks), path, "*Lab4");
        using IccTransform transform = IccTransform.Precise(
            IccProfile.Read("p.icc", bytes).Value, IccProfile.Lab, IccIntent.RelativeColorimetric, false).Value;
        double[] ours = new double[3 * Colours];
        transform.Row(mix, ours);

        // transicc prints four decimals; 5e-5 was seen.
        double most = Enumerable.Range(0, ours.Length).Max(i => Math.Abs(theirs[i / 3][i % 3] - ours[i]));
        TestContext.Current.TestOutputHelper!.WriteLine(Invariant($"{inks} {edition}: {most:e2}"));
        Assert.True(most < 1e-4);
    }

    [Theory, MemberData(nameof(All))]
    public void Along_the_edges_of_the_table_our_evaluator_equals_Little_Cms(int inks, IccEdition edition)
    {
        // Little CMS goes by tetrahedra, our evaluator by corners: both are straight where one ink moves and the others are bare or solid.
        _ = Profile(inks, edition, out byte[] bytes);
        byte[] scattered = IccData.Scattered((inks + 2) * Colours);
        double[] mix = new double[inks * Colours], ours = new double[3 * Colours];
        for (int n = 0; n < Colours; n++)
        {
            for (int i = 0; i < inks; i++)
                mix[(n * inks) + i] = scattered[(n * (inks + 2)) + i] & 1;
            mix[(n * inks) + (n % inks)] = scattered[(n * (inks + 2)) + inks] / 255.0;
        }

        using IccTransform transform = IccTransform.Precise(
            IccProfile.Read("p.icc", bytes).Value, IccProfile.Lab, IccIntent.RelativeColorimetric, false).Value;
        transform.Row(mix, ours);
        IccEvaluator evaluator = IccEvaluator.Read("p.icc", bytes).Value;
        double most = 0;
        for (int n = 0; n < Colours; n++)
        {
            double[] own = evaluator.ToPcs(mix.AsSpan(inks * n, inks), IccIntent.RelativeColorimetric);
            most = Math.Max(most, Enumerable.Range(0, 3).Max(c => Math.Abs(own[c] - ours[(3 * n) + c])));
        }

        TestContext.Current.TestOutputHelper!.WriteLine(Invariant($"{inks} {edition}: {most:e2}"));
        Assert.True(most < 0.01);
    }

    [Theory, MemberData(nameof(All))]
    public void Lab_to_inks_equals_transicc(int inks, IccEdition edition)
    {
        string path = Profile(inks, edition, out byte[] bytes);
        double[] labs = [.. IccData.Scattered(3 * Colours).Select((v, i) => i % 3 == 0 ? v / 2.55 : v - 128.0)];
        List<double[]> theirs = Transicc(Rows(labs, 3), "*Lab4", path);
        using IccTransform transform = IccTransform.Precise(
            IccProfile.Lab, IccProfile.Read("p.icc", bytes).Value, IccIntent.RelativeColorimetric, false).Value;
        double[] ours = new double[inks * Colours];
        transform.Row(labs, ours);
        double most = Enumerable.Range(0, ours.Length).Max(i => Math.Abs((theirs[i / inks][i % inks] / 100) - ours[i]));
        TestContext.Current.TestOutputHelper!.WriteLine(Invariant($"{inks} {edition}: {most:e2}"));

        // Six decimals of percent are printed; 5e-7 was seen.
        Assert.True(most < 1e-6);
    }

    [Theory]
    [InlineData(6)]
    [InlineData(7)]
    public void Vips_prints_through_our_profile_as_Little_Cms_does(int inks)
    {
        string path = Profile(inks, IccEdition.V4, out byte[] bytes);
        byte[] rgb = IccData.Scattered(3 * Colours), ours = new byte[inks * Colours];
        using IccTransform transform = IccTransform.Between(
            IccProfile.Srgb, IccProfile.Read("p.icc", bytes).Value, IccIntent.RelativeColorimetric, false).Value;
        transform.Row(rgb, ours);
        using NetVips.Image source = NetVips.Image.NewFromMemoryCopy(rgb, Colours, 1, 3, NetVips.Enums.BandFormat.Uchar)
            .Copy(interpretation: NetVips.Enums.Interpretation.Srgb);
        using NetVips.Image printed = source.IccTransform(
            path, inputProfile: "srgb", intent: NetVips.Enums.Intent.Relative, blackPointCompensation: false);
        byte[] theirs = printed.WriteToMemory<byte>();
        Assert.Equal(ours.Length, theirs.Length);
        int most = ours.Zip(theirs, (a, b) => Math.Abs(a - b)).Max();
        TestContext.Current.TestOutputHelper!.WriteLine(Invariant($"{inks}: {most}"));

        // Its sRGB is not ours: one code was seen.
        Assert.InRange(most, 0, 2);
    }

    [Theory]
    [InlineData(IccEdition.V2)]
    [InlineData(IccEdition.V4)]
    public void Ghostscript_prints_through_our_profile_as_Little_Cms_does(IccEdition edition)
    {
        string path = Profile(4, edition, out byte[] bytes), page = Path.Combine(folder, "page.tif");
        byte[] ours = new byte[4];
        using IccTransform transform = IccTransform.Between(
            IccProfile.Srgb, IccProfile.Read("p.icc", bytes).Value, IccIntent.RelativeColorimetric, false).Value;
        transform.Row([51, 102, 153], ours);
        OutsideProgram.Run(
            "gs", "", "-q", "-dSAFER", "-dBATCH", "-dNOPAUSE", "-sDEVICE=tiff32nc", Invariant($"--permit-file-read={path}"),
            Invariant($"-sOutputICCProfile={path}"), "-dRenderIntent=1", "-dBlackPtComp=0", "-r10", "-g10x10", Invariant($"-sOutputFile={page}"),
            "-c", "0.2 0.4 0.6 setrgbcolor 0 0 100 100 rectfill showpage");
        using BitMiracle.LibTiff.Classic.Tiff tiff = BitMiracle.LibTiff.Classic.Tiff.Open(page, "r");
        byte[] row = new byte[tiff.ScanlineSize()];
        Assert.True(tiff.ReadScanline(row, 5));
        TestContext.Current.TestOutputHelper!.WriteLine(Invariant($"{edition}: {string.Join(' ', row[20..24])} ours {string.Join(' ', ours)}"));
        for (int ink = 0; ink < 4; ink++)
            Assert.InRange(row[20 + ink], ours[ink] - 3, ours[ink] + 3);
    }

    private static string Rows(IEnumerable<double> values, int width)
    {
        StringBuilder text = new();
        foreach (double[] row in values.Chunk(width))
            text.AppendJoin(' ', row.Select(v => Invariant($"{v:R}"))).Append('\n');
        return text.ToString();
    }

    private static List<double[]> Transicc(string input, string from, string to) =>
    [
        .. OutsideProgram.Run("transicc", input, "-t1", "-c0", "-n", "-i", from, "-o", to)
            .Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => IccData.Numbers(l, ' ')).Where(v => v.Length >= 3),
    ];

    private string Profile(int inks, IccEdition edition, out byte[] bytes)
    {
        bytes = InkTables.Profile(inks, edition);
        string path = Path.Combine(folder, "inks.icc");
        File.WriteAllBytes(path, bytes);
        return path;
    }
}
