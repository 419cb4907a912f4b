using Laydown.Artwork.Pages;
using Laydown.Measures;
using Xunit;

namespace Laydown.Edges.Tests.Artwork;

/// <summary>Measures of PDF pages whose whole truth stands in the test: lines, cut paths, separations, layers, inks.</summary>
public sealed class PdfMeasureLawTests : IDisposable
{
    private const double Mm = 25.4 / 72;

    private readonly WorkFolder work = new();

    [Fact]
    public async Task Line_widths_follow_every_scale_down_to_the_page()
    {
        string form = HandPdf.Stream("0.5 w 0 0 m 10 10 l S", "/Type/XObject/Subtype/Form/BBox[0 0 100 100]/Matrix[0.5 0 0 0.5 0 0]");
        var page = await ReadAsync("/MediaBox[0 0 300 200]/UserUnit 2", "/XObject<</F 5 0 R>>",
            "2 w 10 10 m 100 10 l S q 0.25 0 0 0.25 0 0 cm /F Do Q q 1 0 0 3 0 0 cm 1 w 20 20 m 40 20 l S Q 0 w 5 5 m 6 6 l S 9 w 0 0 m 1 1 l n", "", form);

        double[] expected = [0, 0.5 * 0.5 * 0.25 * 2 * Mm, 1 * 2 * Mm, 2 * 2 * Mm];
        Assert.Equal(expected.Length, page.ThinnestLines.Count);
        Assert.All(expected.Zip(page.ThinnestLines), pair => Assert.Equal(pair.First, pair.Second.WidthMm, 1e-9));
        Assert.Equal(20 * Mm, page.ThinnestLines[3].Place.XMm, 1e-9);
        Assert.Equal(180 * Mm, page.ThinnestLines[3].Place.WidthMm, 1e-9);
    }

    [Fact]
    public async Task Text_sizes_follow_every_scale_and_turn()
    {
        string font = "/Font<</H 5 0 R>>";
        var page = await ReadAsync("/MediaBox[-50 -50 250 150]/UserUnit 3/Rotate 90", font,
            "BT /H 10 Tf 0.5 0 0 0.5 20 30 Tm (small) Tj ET q 0 2 -2 0 100 20 cm BT /H 6 Tf (turned) Tj ET Q BT /H 4 Tf 3 Tr 0 0 Td (unseen) Tj ET", "",
            "<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>");

        Assert.Equal(["small", "turned"], page.SmallestTexts.Select(t => t.Sample));
        Assert.Equal(15, page.SmallestTexts[0].SizePt, 0.01);
        Assert.Equal(36, page.SmallestTexts[1].SizePt, 0.01);

        // Turned clockwise, a point (x, y) from the media corner lies at (y, width − x).
        var place = page.SmallestTexts[0].Place;
        Assert.Equal((30 + 50) * 3 * Mm, place.XMm, 3 * Mm);
        Assert.InRange(place.TopMm, ((300 - 70) * 3 * Mm) - (3 * Mm), ((300 - 70) * 3 * Mm) + (3 * Mm));
    }

    [Fact]
    public async Task A_circle_to_cut_is_flattened_within_a_tenth_of_a_millimetre()
    {
        // Four cubic curves make a circle of radius 100 units to 0.03 %: from memory, the usual constant 0.5523.
        const double K = 55.23;
        string circle = Invariant($"100 0 m 100 {K} {K} 100 0 100 c -{K} 100 -100 {K} -100 0 c -100 -{K} -{K} -100 0 -100 c {K} -100 100 -{K} 100 0 c h S");
        var page = await ReadAsync("/MediaBox[0 0 600 400]/UserUnit 4", "/ColorSpace<</C " + HandPdf.Separation("Cut", "0 1 0 0") + ">>",
            "/C CS 1 SCN 0.25 w q 1 0 0 1 300 200 cm " + circle + " Q 10 10 30 20 re S 5 5 m 9 9 l S");

        Assert.Equal(3, page.CutPaths.Count);
        Assert.Equal([true, true, false], page.CutPaths.Select(c => c.Closed));
        Assert.All(page.CutPaths, c => Assert.Equal("Cutting", c.ProcessStep));
        var (centreX, centreY, radius) = (300 * 4 * Mm, 200 * 4 * Mm, 100 * 4 * Mm);
        var corners = page.CutPaths[0].Points;
        for (int at = 0; at < corners.Count; at++)
        {
            var (one, other) = (corners[at], corners[(at + 1) % corners.Count]);
            double middle = Math.Sqrt(Math.Pow(((one.XMm + other.XMm) / 2) - centreX, 2) + Math.Pow(((one.YMm + other.YMm) / 2) - centreY, 2));
            Assert.InRange(middle, radius - 0.1 - (radius * 0.0003), radius + (radius * 0.0003));
        }

        Assert.Equal(4, page.CutPaths[1].Points.Count);
        Assert.Equal(new PointMm(10 * 4 * Mm, 10 * 4 * Mm), page.CutPaths[1].Points[0]);
        Assert.Empty(page.ThinnestLines);
    }

    [Fact]
    public async Task Roles_come_from_the_layers_processing_step_before_the_name()
    {
        string group = "<</Type/OCG/Name({0})/GTS_Metadata<</GTS_ProcStepsGroup/{1}{2}>>>>";
        string resources = "/ColorSpace<</A " + HandPdf.Separation("Harbour#20Red", "0 1 1 0") + "/B " + HandPdf.Separation("Spot#20Seven", "0 0 1 0")
            + "/C " + HandPdf.Separation("White", "0 0 0 0") + "/D " + HandPdf.Separation("Kiss-Cut", "1 0 0 0") + "/N [/DeviceN [/Magenta /Varnish /None] /DeviceCMYK 8 0 R]"
            + ">>/Properties<</L1 5 0 R/L2 6 0 R/L3 7 0 R>>/ExtGState<</O <</OP true/op true>>>>";
        string content = "/OC /L1 BDC /A CS 1 SCN 10 10 50 50 re S EMC /OC /L2 BDC /B cs 1 scn 80 10 50 50 re f EMC "
            + "/OC /L3 BDC /C cs 1 scn 10 80 20 20 re f EMC /D CS 1 SCN 100 100 20 20 re S /O gs /N cs 1 1 1 scn 0 0 5 5 re f";
        var page = await ReadAsync("/MediaBox[0 0 200 200]", resources, content, "/OCProperties<</OCGs[5 0 R 6 0 R 7 0 R]/D<</OFF[7 0 R]>>>>",
            string.Format(System.Globalization.CultureInfo.InvariantCulture, group, "Contour", "Structural", "/GTS_ProcStepsType/PartialCutting"),
            string.Format(System.Globalization.CultureInfo.InvariantCulture, group, "Base", "White", ""),
            "<</Type/OCG/Name(Sizes)>>", HandPdf.Stream("{pop pop 0 0 0}", "/FunctionType 4/Domain[0 1 0 1 0 1]/Range[0 1 0 1 0 1 0 1]"));

        NamedSeparation[] expected =
        [
            new("Harbour Red", SeparationRole.Cut, "Structural/PartialCutting", false),
            new("Kiss-Cut", SeparationRole.Cut, null, false),
            new("Spot Seven", SeparationRole.White, "White", false),
            new("Varnish", SeparationRole.Clear, null, true),
            new("White", SeparationRole.White, null, false),
        ];
        Assert.Equal(expected, page.Separations);
        Assert.Equal(["Sizes"], page.HiddenLayers);
        Assert.Equal(["PartialCutting", "PartialCutting"], page.CutPaths.Select(c => c.ProcessStep));
        Assert.True(page.Overprint);
        Assert.False(page.Transparency);
    }

    [Theory]
    [InlineData("White", "White")]
    [InlineData("white 2", "White")]
    [InlineData("VARNISH", "Clear")]
    [InlineData("Through_Cut", "Cut")]
    [InlineData("Die-Line", "Cut")]
    [InlineData("Drill", "Drill")]
    [InlineData("Notes", "Legend")]
    [InlineData("Dusk Blue", "Unknown")]
    [InlineData("Whitewash", "Unknown")]
    public void Plain_names_give_roles(string name, string role) => Assert.Equal(role, Laydown.Formats.Pdf.SeparationRoles.ByName(name).ToString());

    [Fact]
    public async Task Separations_are_found_in_forms_patterns_and_shadings_that_are_not_even_used()
    {
        string inner = HandPdf.Stream("n", "/Type/XObject/Subtype/Form/BBox[0 0 9 9]/Resources<</ColorSpace<</S " + HandPdf.Separation("In#20form", "1 0 0 0") + ">>>>");
        string tile = HandPdf.Stream("/S cs 1 scn 0 0 1 1 re f", "/Type/Pattern/PatternType 1/PaintType 1/TilingType 1/BBox[0 0 4 4]/XStep 4/YStep 4/Resources<</ColorSpace<</S " + HandPdf.Separation("In#20tile", "0 1 0 0") + ">>>>");
        string shade = "<</ShadingType 2/ColorSpace " + HandPdf.Separation("In#20shading", "0 0 1 0") + "/Coords[0 0 1 1]/Function<</FunctionType 2/Domain[0 1]/C0[0]/C1[1]/N 1>>>>";
        var page = await ReadAsync("/MediaBox[0 0 200 200]", "/XObject<</F 5 0 R>>/Pattern<</P 6 0 R/Q <</PatternType 2/Shading 7 0 R>>>>", "/Pattern cs /P scn 0 0 50 50 re f", "", inner, tile, shade);
        Assert.Equal(["In form", "In shading", "In tile"], page.Separations.Select(s => s.Name));
        Assert.Equal([null, null, false], page.Separations.Select(s => s.Overprints));
        Assert.Contains("Separation", page.ColourSpaces);
    }

    [Theory]
    [InlineData("<</ca 0.5>>", true)]
    [InlineData("<</BM/Multiply>>", true)]
    [InlineData("<</BM[/Screen/Normal]>>", true)]
    [InlineData("<</SMask<</S/Luminosity/G 5 0 R>>>>", true)]
    [InlineData("<</BM/Normal/ca 1/SMask/None>>", false)]
    public async Task Transparency_is_told_from_the_states_in_use(string state, bool transparent)
    {
        var page = await ReadAsync("/MediaBox[0 0 200 200]", "/ExtGState<</T " + state + ">>", "/T gs 0 0 0 1 k 0 0 50 50 re f", "",
            HandPdf.Stream("1 g 0 0 50 50 re f", "/Type/XObject/Subtype/Form/BBox[0 0 50 50]/Group<</S/Transparency/CS/DeviceGray>>"));
        Assert.Equal(transparent, page.Transparency);
    }

    [Fact]
    public async Task Total_ink_is_the_highest_sum_of_cmyk_content_and_its_place()
    {
        // 80 + 70 + 60 + 90 = 300 %; saturated RGB beside it and a named separation count for nothing.
        var page = await ReadAsync("/MediaBox[0 0 200 100]", "/ColorSpace<</W " + HandPdf.Separation("White", "1 1 1 1") + ">>",
            "0.1 0.1 0.1 0.2 k 0 0 200 100 re f 0.8 0.7 0.6 0.9 k 120 20 40 40 re f 0 0 0 rg 0 0 40 40 re f /W cs 1 scn 60 60 20 20 re f");
        Assert.Equal(300, page.TotalInkPercent!.Value, 1.2);
        Assert.True(new RectMm(120 * Mm, 20 * Mm, 40 * Mm, 40 * Mm).Grown(0.4).Holds(page.TotalInkPlace!.Value));
    }

    [Fact]
    public async Task A_page_without_cmyk_has_no_total_ink()
    {
        var page = await ReadAsync("/MediaBox[0 0 200 100]", "", "0 0 0 rg 0 0 40 40 re f");
        Assert.Null(page.TotalInkPercent);
        Assert.Equal(["DeviceRGB"], page.ColourSpaces);
    }

    [Fact]
    public async Task The_file_tells_version_output_condition_and_its_hash()
    {
        byte[] bytes = HandPdf.Page("/MediaBox[0 0 200 100]", "", "n", "/OutputIntents[<</Type/OutputIntent/S/GTS_PDFX/OutputConditionIdentifier(Tidewrack demo board)>>]");
        var file = (await work.Reader.ReadAsync(work.Write("intent.pdf", bytes), CancellationToken.None)).Value;
        Assert.Equal(ArtworkKind.Pdf, file.Kind);
        Assert.Equal("1.6", file.Version);
        Assert.Equal("Tidewrack demo board", file.OutputIntent);
        Assert.Equal(bytes.Length, file.Bytes);
        Assert.StartsWith(file.Sha256, await WorkFolder.RunAsync("sha256sum", "", work.File("intent.pdf")), StringComparison.Ordinal);
    }

    public void Dispose() => work.Dispose();

    private async Task<ArtworkPage> ReadAsync(string entries, string resources, string content, string catalog = "", params string[] more)
    {
        string pdf = work.Write("page.pdf", HandPdf.Page(entries, resources, content, catalog, more));
        var read = await work.Reader.ReadAsync(pdf, CancellationToken.None);
        Assert.True(read.IsTaken, string.Join("\n", read.Faults));
        return Assert.Single(read.Value.Pages);
    }
}
