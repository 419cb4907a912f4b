using System.Text.Json.Nodes;
using Laydown.Edges.Tests.CommandLines;
using Laydown.Edges.Tests.Store;
using Laydown.Output.Documents;
using Laydown.Shop.Press;
using Xunit;

namespace Laydown.Edges.Tests.Documents;

/// <summary>Labels of lots as independent programs read them: poppler and ZXing.</summary>
public sealed class StockLabelsReferenceTests : IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Ten_labels_fill_a_page_and_each_names_its_lot()
    {
        byte[] pdf = new PressPapers().Labels("Tidewrack Signs", [.. Enumerable.Range(1, 11).Select(Label)]);
        string path = Path.Combine(folder.Path, "labels.pdf");
        File.WriteAllBytes(path, pdf);
        string text = PdfTools.Run("pdftotext", "-layout", path, "-").Out;
        string[] pages = text.Split('\f', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(2, pages.Length);
        Assert.All(Enumerable.Range(1, 10), i => Assert.Contains(Invariant($"L-{i:0000}"), pages[0], StringComparison.Ordinal));
        Assert.Contains("L-0011", pages[1], StringComparison.Ordinal);
        Assert.Contains("1010 × 740 mm", text, StringComparison.Ordinal);
        Assert.Equal(pdf, new PressPapers().Labels("Tidewrack Signs", [.. Enumerable.Range(1, 11).Select(Label)]));
    }

    [Fact]
    public void The_code_of_a_label_opens_the_lot()
    {
        string path = Path.Combine(folder.Path, "label.pdf");
        File.WriteAllBytes(path, new PressPapers().Labels("Tidewrack Signs", [Label(12)]));
        PdfTools.Run("pdftoppm", "-r", "150", "-gray", path, Path.Combine(folder.Path, "page"));
        Assert.Equal("/stock#L-0012", SetUpSheetReferenceTests.Decode(Directory.GetFiles(folder.Path, "page*.pgm").Single()));
    }

    [Fact]
    public async Task Where_the_shop_says_where_its_pages_are_the_code_holds_the_whole_address()
    {
        using CliShop shop = new();
        string file = Path.Combine(shop.Folder, "catalogue", "shop.json"), path = Path.Combine(folder.Path, "label.pdf");
        JsonNode described = JsonNode.Parse(File.ReadAllText(file))!;
        described["address"] = "http://press-room:5080/";
        File.WriteAllText(file, described.ToJsonString());
        await shop.AskAsync("stock", "receive", "foamed-pvc-3", "3", "--place", "rack 1");
        Assert.Equal(0, (await shop.AskAsync("stock", "labels", "--out", path)).Code);
        PdfTools.Run("pdftoppm", "-r", "150", "-gray", path, Path.Combine(folder.Path, "page"));
        Assert.Equal("http://press-room:5080/stock#L-0001", SetUpSheetReferenceTests.Decode(Directory.GetFiles(folder.Path, "page*.pgm").Single()));
    }

    [Fact]
    public void No_label_is_refused() => Assert.Throws<ArgumentException>(() => new PressPapers().Labels("Tidewrack Signs", []));

    private static StockLabel Label(int number) => new(
        Invariant($"L-{number:0000}"), "Clear acrylic, 5 mm", "1010 × 740 mm", "offcut rack", new(2026, 11, 26), "offcut of R-20261126-03", Invariant($"/stock#L-{number:0000}"));
}
