using Laydown.Artwork.Pages;
using QRCoder;
using Xunit;

namespace Laydown.Edges.Tests.Artwork;

/// <summary>Bar codes drawn as vectors of known module width: QR by an independent encoder, EAN-13 from its own printed tables.</summary>
public sealed class CodesReferenceTests : IDisposable
{
    // Digit patterns of EAN-13 and the sets of its left half, as printed in the GS1 General Specifications; from memory.
    private static readonly string[] SetA = ["0001101", "0011001", "0010011", "0111101", "0100011", "0110001", "0101111", "0111011", "0110111", "0001011"];
    private static readonly string[] Sets = ["AAAAAA", "AABABB", "AABBAB", "AABBBA", "ABAABB", "ABBAAB", "ABBBAA", "ABABAB", "ABABBA", "ABBABA"];

    private readonly WorkFolder work = new();

    [Theory, InlineData(0.33, false), InlineData(0.264, false), InlineData(0.66, true)]
    public async Task An_EAN_13_is_read_with_its_module_and_quiet_zone(double moduleMm, bool onItsSide)
    {
        const string Number = "7300011000017";
        string bars = Bars(Ean13(Number), moduleMm, quiet: 5);
        string turn = onItsSide ? "0 1 -1 0 200 60 cm " : "1 0 0 1 60 60 cm ";
        string pdf = work.Write("code.pdf", HandPdf.Page("/MediaBox[0 0 400 400]", "", "0 0 0 1 k q " + turn + bars + " Q"));
        var code = Assert.Single((await work.Reader.ReadAsync(pdf, CancellationToken.None)).Value.Pages[0].Codes);

        Assert.Equal(("EAN-13", Number), (code.Symbology, code.Text));
        Assert.Equal(moduleMm, code.ModuleMm, moduleMm * 0.02);

        // The picture that is measured has 300 ppi, and bars may grow by a pixel at each edge.
        Assert.Equal(5, code.QuietZoneModules!.Value, 2 * 25.4 / 300 / moduleMm);
        var (left, bottom, width, height) = onItsSide
            ? ((200 * 25.4 / 72) - 20, 60 * 25.4 / 72, 20.0, 95 * moduleMm)
            : (60 * 25.4 / 72, 60 * 25.4 / 72, 95 * moduleMm, 20.0);
        Assert.Equal(left, code.Place.XMm, 0.3);
        Assert.Equal(bottom, code.Place.YMm, 0.3);
        Assert.Equal(width, code.Place.WidthMm, 0.4);
        Assert.Equal(height, code.Place.HeightMm, 0.4);
    }

    [Theory, InlineData("https://tidewrack.example/stop/7", 0.8, 0), InlineData("Saltmarsh Observatory, trail 3, post 12: the tide comes in faster than you walk.", 1.5, 30), InlineData("T", 2, 90)]
    public async Task A_QR_is_read_with_its_module_and_quiet_zone(string text, double moduleMm, int turn)
    {
        var matrix = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M).ModuleMatrix;
        int side = matrix.Count - 8;
        double unit = moduleMm * 72 / 25.4;
        string squares = string.Concat(from row in Enumerable.Range(0, side)
                                       from column in Enumerable.Range(0, side)
                                       where matrix[row + 4][column + 4]
                                       select Invariant($"{column * unit:0.####} {(side - 1 - row) * unit:0.####} {unit:0.####} {unit:0.####} re "));
        double c = Math.Cos(turn * Math.PI / 180), s = Math.Sin(turn * Math.PI / 180);
        string pdf = work.Write("code.pdf", HandPdf.Page("/MediaBox[0 0 500 500]", "", Invariant($"0 0 0 1 k q {c:0.######} {s:0.######} {-s:0.######} {c:0.######} 250 180 cm {squares} f Q")));
        var code = Assert.Single((await work.Reader.ReadAsync(pdf, CancellationToken.None)).Value.Pages[0].Codes);

        Assert.Equal(("QR", text), (code.Symbology, code.Text));
        Assert.Equal(moduleMm, code.ModuleMm, moduleMm * 0.02);
        Assert.InRange(code.QuietZoneModules!.Value, 4, 20);
        Assert.InRange(code.Place.WidthMm, side * moduleMm * 0.97, side * moduleMm * 1.45);
    }

    [Fact]
    public async Task A_page_of_stripes_and_text_has_no_code()
    {
        string stripes = string.Concat(Enumerable.Range(0, 60).Select(i => Invariant($"{i * 6} 20 {1 + (i % 3)} 100 re f ")));
        string pdf = work.Write("stripes.pdf", HandPdf.Page("/MediaBox[0 0 400 400]", "/Font<</H <</Type/Font/Subtype/Type1/BaseFont/Helvetica>>>>", "0 g " + stripes + "BT /H 30 Tf 20 200 Td (Estuary walk) Tj ET"));
        Assert.Empty((await work.Reader.ReadAsync(pdf, CancellationToken.None)).Value.Pages[0].Codes);
    }

    public void Dispose() => work.Dispose();

    private static string Ean13(string number)
    {
        string left = string.Concat(number[1..7].Zip(Sets[number[0] - '0'], (digit, set) => set == 'A' ? SetA[digit - '0'] : Flip(Swap(SetA[digit - '0']))));
        string right = string.Concat(number[7..].Select(digit => Swap(SetA[digit - '0'])));
        return "101" + left + "01010" + right + "101";
    }

    private static string Swap(string pattern) => string.Concat(pattern.Select(b => b == '0' ? '1' : '0'));

    private static string Flip(string pattern) => string.Concat(pattern.Reverse());

    /// <summary>Bars 20 mm high from the origin, and a mark on each side where the quiet zone ends.</summary>
    private static string Bars(string pattern, double moduleMm, int quiet)
    {
        double unit = moduleMm * 72 / 25.4, height = 20 * 72 / 25.4;
        string bars = string.Concat(pattern.Select((bar, at) => bar == '1' ? Invariant($"{at * unit:0.####} 0 {unit:0.####} {height:0.####} re ") : ""));
        return bars + Invariant($"{-(quiet + 8) * unit:0.####} 0 {8 * unit:0.####} {height:0.####} re {(95 + quiet) * unit:0.####} 0 {8 * unit:0.####} {height:0.####} re f");
    }
}
