using System.Text.RegularExpressions;
using Laydown.Measures;
using Laydown.Output.Documents;
using Laydown.Plan.Orders;
using Laydown.Shop.Run;
using Xunit;

namespace Laydown.Edges.Tests.Documents;

/// <summary>Quotes as independent programs read them.</summary>
public sealed class QuoteReferenceTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("laydown-quote-").FullName;
    private readonly RunDocuments documents = new();

    [Fact]
    public void The_quote_is_a_whole_PDF_and_the_prices_read_from_it_add_up_to_the_cent()
    {
        string path = PdfTools.Write(folder, "quote.pdf", documents.QuotePdf(Sample(lit: true)));
        (int code, string said) = PdfTools.Run("qpdf", "--check", path);
        Assert.True(code == 0, said);
        string words = PdfTools.Text(path);

        // Read the amounts back from the paper: lines, then net, tax and total.
        decimal[] amounts = [.. Regex.Matches(words, @"(?<!≈ )\b\d+\.\d{2}\b").Select(m => decimal.Parse(m.Value, System.Globalization.CultureInfo.InvariantCulture))];
        decimal net = Amount(words, "Net"), tax = Amount(words, "Tax 20 %"), total = Amount(words, "Total EUR");
        Assert.Equal(1234.56m + 87.10m, net);
        Assert.Equal(net + tax, total);
        Assert.Equal(Math.Round(net * 0.2m, 2, MidpointRounding.AwayFromZero), tax);
        Assert.Equal([1234.56m, 87.10m, net, tax, total], amounts);
    }

    [Fact]
    public void It_says_how_long_it_holds_what_is_held_back_and_why()
    {
        string words = PdfTools.Text(PdfTools.Write(folder, "quote.pdf", documents.QuotePdf(Sample(lit: false))));
        Assert.Contains("holds until 2026-12-26", words, StringComparison.Ordinal);
        Assert.Contains("Wanted by", words, StringComparison.Ordinal);
        Assert.Contains(Invariant($"{Sample(lit: false).Order.Items[0].Due:yyyy-MM-dd}"), words, StringComparison.Ordinal);
        Assert.Contains("TW-3001-3", words, StringComparison.Ordinal);
        Assert.Contains("The file is protected by a password.", words, StringComparison.Ordinal);
        Assert.DoesNotContain("electrician", words, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_made_beyond_what_was_asked_for_is_told_under_its_line()
    {
        Quote sample = Sample(lit: false);
        QuoteLine[] lines = [sample.Lines[0], sample.Lines[1] with { Made = 15 }, sample.Lines[2]];
        string words = PdfTools.Text(PdfTools.Write(folder, "quote.pdf", documents.QuotePdf(sample with { Lines = lines })));
        Assert.Contains("12 asked for, 15 made: 3 more come in addition.", words, StringComparison.Ordinal);
        Assert.DoesNotContain("more come in addition", PdfTools.Text(PdfTools.Write(folder, "plain.pdf", documents.QuotePdf(sample))), StringComparison.Ordinal);
    }

    [Fact]
    public void A_lit_panel_carries_its_caution()
    {
        string words = PdfTools.Text(PdfTools.Write(folder, "quote.pdf", documents.QuotePdf(Sample(lit: true))));
        Assert.Contains("licensed electrician", words, StringComparison.Ordinal);
        Assert.Contains("real lamp for sign-off", words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_long_order_runs_over_several_pages_and_loses_no_item()
    {
        Quote sample = Sample(lit: false);
        QuoteLine[] lines = [.. Enumerable.Range(1, 60).Select(i => new QuoteLine(Invariant($"TW-3001-{i}"), Invariant($"Sign number {i}, 300 × 200 mm"), i, new Money(101), null))];
        byte[] pdf = documents.QuotePdf(sample with { Lines = lines, Net = new(6060), Tax = new(1212), Gross = new(7272) });
        string words = PdfTools.Text(PdfTools.Write(folder, "long.pdf", pdf));
        Assert.All(lines, l => Assert.Contains(l.Text, words, StringComparison.Ordinal));
        Assert.Matches("page 1 of [2-9]", words);
    }

    [Fact]
    public void Sums_that_do_not_add_up_are_refused_before_anything_is_drawn()
    {
        Quote sample = Sample(lit: false);
        Assert.Throws<ArgumentException>(() => documents.QuotePdf(sample with { Net = new(sample.Net.Cents + 1) }));
        Assert.Throws<ArgumentException>(() => documents.QuotePdf(sample with { Gross = new(sample.Gross.Cents - 1) }));
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private static decimal Amount(string words, string name) =>
        decimal.Parse(Regex.Match(words, Regex.Escape(name) + @" (\d+\.\d{2})").Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);

    internal static Quote Sample(bool lit)
    {
        BuildWish build = new(lit, lit, lit, null, null, 0, 0, false);
        Item[] items = [Shopfloor.Item("TW-3001-1", "Estuary panel", Shopfloor.Clear, 900, 600, 1, build), Shopfloor.Item("TW-3001-2", "Trail sign", Shopfloor.Board, 420, 300, 12), Shopfloor.Item("TW-3001-3", "Wall", Shopfloor.Roll, 3000, 2000, 1)];
        Order order = new("TW-3001", "Saltmarsh Observatory, visitor centre (invented)", new(2026, 11, 20), "Deliver to the boathouse, please ring first.", items);
        QuoteLine[] lines =
        [
            new("TW-3001-1", "Estuary panel, 900 × 600 mm, Clear acrylic, 5 mm, cut square, packed", 1, new Money(123456), null),
            new("TW-3001-2", "Trail sign, 420 × 300 mm, Aluminium composite, white, 3 mm, cut square, 4 holes drilled, packed", 12, new Money(8710), null),
            new("TW-3001-3", "Wall, 3000 × 2000 mm, Wall film", 1, null, "The file is protected by a password."),
        ];
        return new("Tidewrack Signs", order, new(2026, 11, 26), new(2026, 12, 26), "EUR", lines, new(132166), 20, new(26433), new(158599));
    }
}
