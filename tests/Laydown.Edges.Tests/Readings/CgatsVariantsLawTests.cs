using System.Text;
using Laydown.Colour.Readings;
using Laydown.Formats.Readings;

namespace Laydown.Edges.Tests.Readings;

/// <summary>The same readings in the ways that files are found in give the same patches.</summary>
public sealed class CgatsVariantsLawTests
{
    private static readonly string[] Rows = ["1 0 0 0 0 95 1.5 -2", "2 100 50 0 0 40.25 -3 -45"];

    private static readonly string Plain = ReadingsData.Cgats(ReadingsData.Inks, Rows);

    public static IEnumerable<TheoryDataRow<string, string>> Variants() =>
    [
        new("CR LF", Plain.Replace("\n", "\r\n", StringComparison.Ordinal)),
        new("CR", Plain.Replace('\n', '\r')),
        new("tabs", Plain.Replace(' ', '\t')),
        new("many blanks and indents", Plain.Replace(" ", "    ", StringComparison.Ordinal).Replace("\n", " \n\t", StringComparison.Ordinal)),
        new("comments", "# by hand\n" + Plain.Replace("BEGIN_DATA\n", "BEGIN_DATA\n# first\n", StringComparison.Ordinal).Replace("95 1.5 -2", "95 1.5 -2 # paper", StringComparison.Ordinal)),
        new("a first line that lies", Plain.Replace("CGATS.17", "CTI3", StringComparison.Ordinal)),
        new("another first line", Plain.Replace("CGATS.17", "IT8.7/3", StringComparison.Ordinal)),
        new("no first line", Plain.Replace("CGATS.17\n", "", StringComparison.Ordinal)),
        new("quoted words", Plain.Replace("CMYK_C", "\"CMYK_C\"", StringComparison.Ordinal).Replace("40.25", "\"40.25\"", StringComparison.Ordinal)),
        new("declared keywords", Plain.Replace("CGATS.17", "ISO28178\nKEYWORD \"OWN_WORD\"\nOWN_WORD \"x y\"", StringComparison.Ordinal)),
        new("no count", Plain.Replace("NUMBER_OF_SETS 2\n", "", StringComparison.Ordinal)),
        new("count too small", Plain.Replace("NUMBER_OF_SETS 2", "NUMBER_OF_SETS 1", StringComparison.Ordinal)),
        new("decimal comma", Plain.Replace("1.5", "1,5", StringComparison.Ordinal).Replace("40.25", "40,25", StringComparison.Ordinal)),
        new("parts of one", Plain.Replace("100 50", "1 0.5", StringComparison.Ordinal)),
        new("fields over two lines", Plain.Replace("CMYK_K ", "CMYK_K\n", StringComparison.Ordinal)),
        new("rows over two lines", Plain.Replace("95 1.5", "95\n1.5", StringComparison.Ordinal).Replace("0 40.25", "0\n40.25", StringComparison.Ordinal)),
        new("small letters", Plain.ToLowerInvariant()),
        new("numbered inks", Plain.Replace("CGATS.17", "CGATS.17\nCOLOR_REP \"CMYK_LAB\"", StringComparison.Ordinal).Replace("CMYK_C CMYK_M CMYK_Y CMYK_K", "4CLR_1 4CLR_2 4CLR_3 4CLR_4", StringComparison.Ordinal)),
        new("a table of something else before", ReadingsData.Cgats("SAMPLE_ID D_VIS", "1 0.05") + Plain),
        new("XYZ beside Lab", ReadingsData.Cgats(ReadingsData.Inks + " XYZ_X XYZ_Y XYZ_Z", [.. Rows.Select(r => r + " 1 2 3")])),
        new("CSV", "id,C,M,Y,K,L,a,b\n" + string.Join('\n', Rows).Replace(' ', ',')),
        new("CSV with decimal comma", "id;C;M;Y;K;L;a;b\r\n" + string.Join("\r\n", Rows).Replace(' ', ';').Replace('.', ',')),
        new("CSV with XYZ names reused", "id,C,M,Y,K,L*,a*,b*,X,Y,Z\n" + string.Join(",8,9,7\n", Rows).Replace(' ', ',') + ",8,9,7"),
    ];

    [Theory, MemberData(nameof(Variants))]
    public void Every_variant_gives_the_same_patches(string variant, string text)
    {
        ReadingSet set = ReadingsData.ReadText(text).Match(taken => taken, faults => throw new Xunit.Sdk.XunitException($"{variant}: {faults[0]}"));
        Assert.Equal(["Cyan", "Magenta", "Yellow", "Black"], set.InkNames);
        Assert.Equal(["1", "2"], set.Patches.Select(p => p.Id));
        Assert.Equal([1, 0.5, 0, 0], set.Patches[1].Inks);
        Assert.Equal(new(40.25, -3, -45), set.Patches[1].Lab);
    }

    [Fact]
    public void A_byte_order_mark_and_Latin_1_are_read()
    {
        byte[] marked = [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(Plain.Replace("CGATS.17", "CGATS.17\nDESCRIPTOR \"Größe µ\"", StringComparison.Ordinal))];
        byte[] latin = Encoding.Latin1.GetBytes(Plain.Replace("CGATS.17", "CGATS.17\nDESCRIPTOR \"Größe µ\"", StringComparison.Ordinal));
        Assert.Equal("Größe µ", ReadingsFile.Read("a.txt", marked).Value.Name);
        Assert.Equal("Größe µ", ReadingsFile.Read("a.txt", latin).Value.Name);
    }

    [Fact]
    public void A_wrong_count_is_told()
    {
        Assert.Contains(ReadingsData.ReadText(Plain.Replace("NUMBER_OF_SETS 2", "NUMBER_OF_SETS 1", StringComparison.Ordinal)).Value.Notes, n => n.Contains("says 1; 2 rows", StringComparison.Ordinal));
        Assert.Contains(ReadingsData.ReadText(Plain.Replace("NUMBER_OF_SETS 2\n", "", StringComparison.Ordinal)).Value.Notes, n => n.Contains("missing", StringComparison.Ordinal));
        Assert.DoesNotContain(ReadingsData.ReadText(Plain).Value.Notes, n => n.Contains("NUMBER_OF_SETS", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("SPECTRAL_NM")]
    [InlineData("SPECTRAL_")]
    [InlineData("nm")]
    [InlineData("SPECTRAL_NM_")]
    [InlineData("R_")]
    [InlineData("")]
    public void Names_of_bands_in_use_are_known(string prefix)
    {
        string fields = "SAMPLE_ID CMYKOGV_C CMYKOGV_O " + string.Join(' ', Enumerable.Range(0, 31).Select(b => Invariant($"{prefix}{400 + (10 * b)}")));
        string row = string.Join(' ', Enumerable.Repeat("0.5", 31));
        ReadingSet set = ReadingsData.ReadText(ReadingsData.Cgats(fields, "1 0 0 " + row, "2 100 0 " + row)).Value;
        Assert.Equal(["Cyan", "Orange"], set.InkNames);
        Assert.True(set.IsSpectral);
        Assert.Equal((400, 10, 700), (set.Patches[0].Spectrum!.FirstNm, set.Patches[0].Spectrum!.StepNm, set.Patches[0].Spectrum!.LastNm));
        Assert.Equal(76.069, set.Patches[0].Lab.L, tolerance: 0.001); // 116·∛0.5 − 16
        Assert.Equal(0, set.Patches[0].Lab.Chroma, tolerance: 0.01);
    }

    [Fact]
    public void Percent_and_wavelengths_in_the_data_are_read()
    {
        string fields = "SAMPLE_ID White " + string.Join(' ', Enumerable.Repeat("SPECTRAL_NM SPECTRAL_PCT", 31));
        string row = string.Join(' ', Enumerable.Range(0, 31).Select(b => Invariant($"{400 + (10 * b)} {60 + b}")));
        ReadingSet set = ReadingsData.ReadText(ReadingsData.Cgats(fields, "\"a b\" 0 " + row, "2 1 " + row)).Value;
        Assert.Equal(["White"], set.InkNames);
        Assert.Equal("a b", set.Patches[0].Id);
        Assert.Equal(0.9, set.Patches[0].Spectrum!.Values[30], tolerance: 1e-12);
    }

    [Fact]
    public void A_light_ink_is_told_from_its_small_letter()
    {
        ReadingSet set = ReadingsData.ReadText(ReadingsData.Cgats("CMYKcm_C CMYKcm_M CMYKcm_c CMYKcm_m LAB_L LAB_A LAB_B", "0 0 0 100 50 0 0")).Value;
        Assert.Equal(["Cyan", "Magenta", "Light Cyan", "Light Magenta"], set.InkNames);
    }

    [Fact]
    public void Reflectance_a_little_under_nothing_is_noise_and_told()
    {
        string fields = "K " + string.Join(' ', Enumerable.Range(0, 31).Select(b => Invariant($"nm{400 + (10 * b)}")));
        string row = string.Join(' ', Enumerable.Repeat("0.5", 30));
        ReadingSet set = ReadingsData.ReadText(ReadingsData.Cgats(fields, "100 -0.004 " + row)).Value;
        Assert.Equal(0, set.Patches[0].Spectrum!.Values[0]);
        Assert.Contains(set.Notes, n => n.StartsWith("1 values of reflectance", StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_written_reads_back_the_same()
    {
        ReadingSet set = ReadingsData.Spectral();
        ReadingSet back = ReadingsFile.Read("there.txt", ReadingsData.Written(set)).Value;
        Assert.Equal(set.Name, back.Name);
        Assert.Equal(set.InkNames, back.InkNames);
        Assert.Equal((set.Measured.Instrument, set.Measured.Condition, set.Measured.Backing, set.Measured.Created), (back.Measured.Instrument, back.Measured.Condition, back.Measured.Backing, back.Measured.Created));
        Assert.Equal(set.Patches.Select(p => p.Id), back.Patches.Select(p => p.Id));
        foreach ((Patch one, Patch other) in set.Patches.Zip(back.Patches))
        {
            // Percent and back costs the last bit of an ink; spectra come back bit for bit.
            Assert.All(one.Inks.Zip(other.Inks), p => Assert.Equal(p.First, p.Second, tolerance: 1e-15));
            Assert.Equal(one.Spectrum!.Values, other.Spectrum!.Values);
            Assert.Equal(one.Lab, other.Lab);
        }
    }

    [Fact]
    public void A_public_set_written_and_read_again_is_the_same()
    {
        ReadingSet set = ReadingsData.ReadFile("TR003.cgats.txt").Value;
        ReadingSet back = ReadingsFile.Read("there.txt", ReadingsData.Written(set)).Value;
        Assert.Equal(set.Patches.Select(p => (p.Id, p.Lab)), back.Patches.Select(p => (p.Id, p.Lab)));
        Assert.All(set.Patches.Zip(back.Patches), p => Assert.All(p.First.Inks.Zip(p.Second.Inks), i => Assert.Equal(i.First, i.Second, tolerance: 1e-15)));
    }
}
