using Laydown.Formats.Icc;

namespace Laydown.Edges.Tests.Icc;

/// <summary>Our evaluator against the ICC's reference implementation.</summary>
public sealed class IccEvaluatorReferenceTests
{
    private static readonly IccIntent[] Intents =
        [IccIntent.Perceptual, IccIntent.RelativeColorimetric, IccIntent.Saturation, IccIntent.AbsoluteColorimetric];

    public static TheoryData<string, IccIntent> Profiles => new MatrixTheoryData<string, IccIntent>(["CGATS21_CRPC7", "sRGB2014", "sRGB_v4_ICC_preference"], Intents);

    [Theory, MemberData(nameof(Profiles))]
    public void Colours_equal_the_reference(string name, IccIntent intent)
    {
        // The reference works in single precision: 4e-5 in Lab by table, 5.2e-5 by the formulas of edition 4 and 6.5e-5 where the absolute
        // intent goes over XYZ are what was seen; 6e-7 in XYZ is its sixth printed decimal.
        double most = Most(name, "ToPcs", intent, (e, v) => e.ToPcs(v, intent), out int rows);
        Assert.Equal(name == "CGATS21_CRPC7" ? 1304 : 222, rows);
        double allowed = name == "sRGB2014" ? 1e-6 : intent == IccIntent.AbsoluteColorimetric ? 7e-5 : name == "CGATS21_CRPC7" ? 4e-5 : 5.5e-5;
        Assert.True(most <= allowed, Invariant($"{most}"));
    }

    [Theory, MemberData(nameof(Profiles))]
    public void Device_values_equal_the_reference(string name, IccIntent intent)
    {
        double most = Most(name, "ToDevice", intent, (e, v) => e.ToDevice(v, intent), out int rows);
        Assert.Equal(name == "sRGB2014" ? 222 : 732, rows);

        // Sixth printed decimal by table, its double where single precision goes over XYZ first. Formulas of edition 4 leave 0 to 1 as far as
        // 4.9, and single precision with them. Sampled curves turned around differ by 5.6e-5; why the reference does so is not known.
        double allowed = name switch
        {
            "CGATS21_CRPC7" => intent == IccIntent.AbsoluteColorimetric ? 2e-6 : 1e-6,
            "sRGB2014" => 6e-5,
            _ => intent is IccIntent.Perceptual or IccIntent.Saturation ? 1e-6 : 1.5e-5,
        };
        Assert.True(most <= allowed, Invariant($"{most}"));
    }

    private static double Most(string name, string way, IccIntent intent, Func<IccEvaluator, double[], double[]> run, out int rows)
    {
        IccEvaluator evaluator = IccEvaluator.Read(name, File.ReadAllBytes(IccData.PathOf(name + ".icc"))).Value;
        (double[] In, double[] Out)[] vectors = [.. IccData.Vectors(Invariant($"{name}_{way}_ICC-{(int)intent}.csv"))];
        rows = vectors.Length;
        double most = vectors.Max(v => run(evaluator, v.In).Zip(v.Out, (a, b) => Math.Abs(a - b)).Max());
        TestContext.Current.TestOutputHelper!.WriteLine(Invariant($"{name} {way} {intent}: {rows} rows, most {most:e2}"));
        return most;
    }
}
