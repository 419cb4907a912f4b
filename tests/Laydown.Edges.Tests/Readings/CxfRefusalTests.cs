using Laydown.Measures;

namespace Laydown.Edges.Tests.Readings;

/// <summary>CxF3 that cannot be taken is refused with what and where.</summary>
public sealed class CxfRefusalTests
{
    private const string Head = "<CxF xmlns=\"http://colorexchangeformat.com/CxF3-core\"><Resources><ObjectCollection>";
    private const string Tail = "</ObjectCollection></Resources></CxF>";
    private const string Inks = "<DeviceColorValues><ColorCMYK><Cyan>100</Cyan><Magenta>0</Magenta><Yellow>0</Yellow><Black>0</Black></ColorCMYK></DeviceColorValues>";

    public static IEnumerable<TheoryDataRow<string, string, string>> Bad() =>
    [
        new("root element", "svg", "<svg/>"),
        new("root element", "CxF of urn:other", "<CxF xmlns=\"urn:other\"/>"),
        new("XML", "DTD", "<!DOCTYPE CxF [<!ENTITY a \"b\">]><CxF/>"),
        new("XML", "deeper than 32", Head + string.Concat(Enumerable.Repeat("<a>", 40)) + string.Concat(Enumerable.Repeat("</a>", 40)) + Tail),
        new("ColorValues", "0 objects", Head + Tail),
        new("object 1, DeviceColorValues", "patch p without inks", Head + Object(Lab("50"), "") + Tail),
        new("object 1, DeviceColorValues", "ColorRGB", Head + Object(Lab("50"), "<DeviceColorValues><ColorRGB><R>1</R></ColorRGB></DeviceColorValues>") + Tail),
        new("object 1, LAB_L", "NaN", Head + Object(Lab("NaN"), Inks) + Tail),
        new("object 1, LAB_L", "nothing", Head + Object(Lab(""), Inks) + Tail),
        new("object 1, ReflectanceSpectrum", " nm every 10 nm, 31 bands", Head + Object(Spectrum("", 31, "0.5"), Inks) + Tail),
        new("object 2, ReflectanceSpectrum", "30 bands", Head + Object(Spectrum("StartWL=\"400\"", 31, "0.5"), Inks) + Object(Spectrum("StartWL=\"400\"", 30, "0.5"), Inks) + Tail),
        new("spectrum", "400 nm to 600 nm", Head + Object(Spectrum("StartWL=\"400\"", 21, "0.5"), Inks) + Tail),
        new("object 1, SPECTRAL_NM400", "reflectance -0.5", Head + Object(Spectrum("StartWL=\"400\"", 31, "-0.5"), Inks) + Tail),
        new("object 1, ColorCIELab", "illuminant D65", Head + Object(Lab("50", "s"), Inks) + "</ObjectCollection><ColorSpecificationCollection><ColorSpecification Id=\"s\"><TristimulusSpec><Illuminant>D65</Illuminant></TristimulusSpec></ColorSpecification></ColorSpecificationCollection></Resources></CxF>"),
    ];

    [Theory, MemberData(nameof(Bad))]
    public void Bad_CxF_is_refused_with_place_and_value(string field, string found, string text)
    {
        Reading<Colour.Readings.ReadingSet> reading = CxfLawTests.Read(text);
        Assert.False(reading.IsTaken);
        Assert.Equal(field, reading.Faults[0].Field);
        Assert.Contains(found, reading.Faults[0].Found, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_object_without_its_fault_is_taken() => Assert.True(CxfLawTests.Read(Head + Object(Lab("50"), Inks) + Tail).IsTaken);

    [Fact]
    public void Every_cut_is_refused_and_none_throws()
    {
        string whole = Head + Object(Lab("50"), Inks) + Tail;
        for (int length = 0; length < whole.Length; length++)
            Assert.False(CxfLawTests.Read(whole[..length]).IsTaken);
    }

    private static string Object(string colour, string device) => $"<Object Name=\"p\"><ColorValues>{colour}</ColorValues>{device}</Object>";

    private static string Lab(string l, string spec = "x") => $"<ColorCIELab ColorSpecification=\"{spec}\"><L>{l}</L><A>0</A><B>0</B></ColorCIELab>";

    private static string Spectrum(string start, int bands, string value) =>
        $"<ReflectanceSpectrum {start}>{string.Join(' ', Enumerable.Repeat(value, bands))}</ReflectanceSpectrum>";
}
