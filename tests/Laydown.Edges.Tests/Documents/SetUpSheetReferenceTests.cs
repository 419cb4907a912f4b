using Laydown.Output.Documents;
using Laydown.Plan.Runs;
using Laydown.Press.Stacks;
using Laydown.Shop.Run;
using Xunit;
using ZXing;

namespace Laydown.Edges.Tests.Documents;

/// <summary>Set-up sheets as independent programs read them: qpdf, poppler, ZXing.</summary>
public sealed class SetUpSheetReferenceTests : IDisposable
{
    private readonly Shopfloor floor = new();
    private readonly RunDocuments documents = new();

    [Theory]
    [InlineData(Shopfloor.Board)]
    [InlineData(Shopfloor.Blank)]
    [InlineData(Shopfloor.Clear)]
    [InlineData(Shopfloor.Roll)]
    public void The_sheet_is_a_whole_A4_PDF_with_all_its_fonts_inside(string stock)
    {
        string path = PdfTools.Write(floor.Folder, stock + ".pdf", documents.SetUpPdf(Plan(stock)));
        PdfTools.Write(floor.Folder, stock + ".html", System.Text.Encoding.UTF8.GetBytes(documents.SetUpHtml(Plan(stock))));
        (int checkedBy, string said) = PdfTools.Run("qpdf", "--check", path);
        Assert.True(checkedBy == 0, said);
        Assert.Contains("A4", PdfTools.Run("pdfinfo", path).Out, StringComparison.Ordinal);

        // Columns of pdffonts: name, type, encoding, embedded, subset, unicode.
        string[] fonts = [.. PdfTools.Run("pdffonts", path).Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2)];
        Assert.NotEmpty(fonts);
        Assert.All(fonts, f => Assert.Matches(@"\byes\s+(yes|no)\s+yes\b", f));
    }

    [Theory]
    [InlineData(Shopfloor.Board)]
    [InlineData(Shopfloor.Blank)]
    [InlineData(Shopfloor.Clear)]
    [InlineData(Shopfloor.Roll)]
    public void Every_word_the_operator_needs_can_be_found_in_the_PDF(string stock)
    {
        RunContext context = Plan(stock);
        string words = PdfTools.Text(PdfTools.Write(floor.Folder, "set-up.pdf", documents.SetUpPdf(context)));
        Laydown.Plan.Runs.Run run = context.Run;

        foreach (string wanted in new[] { run.Id, context.Press.Name, context.Stock.Name, context.Mode.Name, Invariant($"{run.SetUp.HeadGap.Mm:0.0}"), "highest wins", "you stand here", Cautions.Rule, "Invented for the demo", "released by" })
            Assert.Contains(wanted, words, StringComparison.Ordinal);
        foreach (string sentence in run.SetUp.FirstPieceChecks.Concat(run.SetUp.Cautions).Concat(run.SetUp.Refusals))
            Assert.Contains(Start(sentence), words, StringComparison.Ordinal);
        foreach (RunItem item in run.Items)
            Assert.Contains(item.ItemId, words, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_measured_and_let_go_stands_on_the_sheet_and_before_that_a_form_for_it()
    {
        RunContext context = Plan(Shopfloor.Board);
        string form = PdfTools.Text(PdfTools.Write(floor.Folder, "form.pdf", documents.SetUpPdf(context)));
        Assert.Contains("checked by another person", form, StringComparison.Ordinal);
        double mm = context.Stock.ThicknessMm;
        MeasuredSheet measured = new([mm, mm + 0.04, mm + 0.11, mm, mm - 0.03], 0.2, "Ada", "Bo", mm + 0.12, true);
        RunRelease letGo = ReleaseCheck.Of(context.Run, context.Press, context.Stock, measured).Value with { At = new(2026, 11, 26, 9, 5, 0, TimeSpan.Zero) };
        string words = PdfTools.Text(PdfTools.Write(floor.Folder, "let-go.pdf", documents.SetUpPdf(context with { LetGo = letGo })));
        foreach (double point in measured.ThicknessMm)
            Assert.Contains(Invariant($"{point:0.00}"), words, StringComparison.Ordinal);
        foreach (string wanted in new[] { "Ada", Invariant($"Bo, who found {mm + 0.12:0.00} mm"), "0.2 mm over the table", Invariant($"{letGo.HeadGap.Mm:0.0}"), "2026-11-26 09:05" })
            Assert.Contains(wanted, words, StringComparison.Ordinal);
        Assert.DoesNotContain("checked by another person", words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reader_of_codes_finds_the_page_of_the_run() => Assert.Equal("/runs/R-20261126-03", CodeOf(Plan(Shopfloor.Board)));

    [Fact]
    public void Where_the_shop_says_where_its_pages_are_the_code_opens_them() =>
        Assert.Equal("http://press-room:5080/runs/R-20261126-03", CodeOf(Plan(Shopfloor.Board) with { Address = "http://press-room:5080" }));

    private string? CodeOf(RunContext context)
    {
        string path = PdfTools.Write(floor.Folder, "set-up.pdf", documents.SetUpPdf(context));
        Assert.Equal(0, PdfTools.Run("pdftoppm", "-r", "200", "-gray", "-f", "1", "-l", "1", path, Path.Combine(floor.Folder, "page")).Code);
        return Decode(Directory.GetFiles(floor.Folder, "page*.pgm").Single());
    }

    [Fact]
    public void The_same_run_gives_the_same_bytes()
    {
        RunContext context = Plan(Shopfloor.Clear);
        Assert.Equal(documents.SetUpPdf(context), documents.SetUpPdf(context));
        Assert.Equal(documents.SetUpHtml(context), documents.SetUpHtml(context));
    }

    [Fact]
    public void The_page_needs_nothing_else_and_takes_no_words_for_marks()
    {
        string page = documents.SetUpHtml(floor.Plan(Shopfloor.Board, title: "Tide <script>alert(1)</script> & \"table\""));
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("Tide &lt;script&gt;", page, StringComparison.Ordinal);
        Assert.DoesNotMatch("(src|href)=[\"']?https?:", page);
        Assert.DoesNotMatch(@"url\((?!data:)", page);
        Assert.Contains("@font-face", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_no_typeface_can_show_do_not_stop_the_sheet()
    {
        string words = PdfTools.Text(PdfTools.Write(floor.Folder, "set-up.pdf", documents.SetUpPdf(floor.Plan(Shopfloor.Board, title: "Πίνακας \u6F6E \uD83D\uDC26 \uD800 sign"))));
        Assert.Contains("Πίνακας", words, StringComparison.Ordinal);
        Assert.Contains("sign", words, StringComparison.Ordinal);
    }

    public void Dispose() => floor.Dispose();

    private RunContext Plan(string stock) => stock switch
    {
        Shopfloor.Clear => floor.Plan(Shopfloor.Clear, 900, 600, 2, new(true, true, true, WhiteSource.Flood, null, 80, 0, false), 2, "Estuary by day, birds by night"),
        Shopfloor.Blank => floor.Plan(Shopfloor.Blank, 480, 640, 40),
        Shopfloor.Roll => floor.Plan(Shopfloor.Roll, 1500, 2400, 2, distance: 6),
        _ => floor.Plan(Shopfloor.Board),
    };

    // Text may be broken into lines, so the first words are looked for.
    private static string Start(string sentence) => string.Join(' ', sentence.Split(' ').Take(4));

    internal static string? Decode(string graymap)
    {
        byte[] bytes = File.ReadAllBytes(graymap);
        string head = System.Text.Encoding.ASCII.GetString(bytes, 0, 20);
        string[] parts = head.Split((char[]?)null, 5);
        int width = int.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture), height = int.Parse(parts[2], System.Globalization.CultureInfo.InvariantCulture);
        byte[] gray = bytes[^(width * height)..];
        return new BarcodeReaderGeneric { Options = { TryHarder = true, PossibleFormats = [BarcodeFormat.QR_CODE] } }
            .Decode(new RGBLuminanceSource(gray, width, height, RGBLuminanceSource.BitmapFormat.Gray8))?.Text;
    }
}
