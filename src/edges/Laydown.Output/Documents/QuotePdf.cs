using Laydown.Plan.Runs;
using Laydown.Shop.Run;
using SkiaSharp;

namespace Laydown.Output.Documents;

/// <summary>Draws a quote as A4 PDF.</summary>
internal sealed class QuotePdf
{
    private const float Pieces = 418, Text = PdfPaper.Column;
    private readonly Quote quote;
    private readonly PdfPaper paper;

    private QuotePdf(Quote quote, PdfPaper paper) => (this.quote, this.paper) = (quote, paper);

    /// <summary>The quote as PDF.</summary>
    /// <exception cref="ArgumentException">The sums of the quote do not add up to the cent.</exception>
    internal static byte[] Make(Quote quote)
    {
        CheckSums(quote);
        return PdfPaper.Make(Invariant($"Quote {quote.Order.Id}"), quote.ShopName, Invariant($"{quote.ShopName} · quote {quote.Order.Id} of {quote.Date:yyyy-MM-dd}"),
            paper => new QuotePdf(quote, paper).All());
    }

    private static void CheckSums(Quote quote)
    {
        long lines = quote.Lines.Sum(l => l.Price?.Cents ?? 0);
        if (lines + quote.SmallOrder.Cents != quote.Net.Cents || quote.Net + quote.Tax != quote.Gross)
            throw new ArgumentException(Invariant($"Quote {quote.Order.Id}: lines {lines} cents, net {quote.Net.Cents}, tax {quote.Tax.Cents}, gross {quote.Gross.Cents}; wanted sums that add up."), nameof(quote));
    }

    private void All()
    {
        Head();
        Lines();
        Sums();
        Breaks();
        Held();
        Terms();
    }

    private void Head()
    {
        paper.Text("QUOTE", PdfPaper.Left, 46, PageFonts.Bold, 8, PdfPaper.Quiet);
        paper.Text(quote.Order.Id, PdfPaper.Left - 1, 80, PageFonts.MonoBold, 30, PdfPaper.Ink);
        paper.Text(quote.ShopName, PdfPaper.Right, 46, PageFonts.Bold, 11, PdfPaper.Ink, SKTextAlign.Right);
        paper.Text(Invariant($"{quote.Date:yyyy-MM-dd}"), PdfPaper.Right, 61, PageFonts.Mono, 9, PdfPaper.Ink, SKTextAlign.Right);
        paper.Text(Invariant($"holds until {quote.ValidUntil:yyyy-MM-dd}"), PdfPaper.Right, 80, PageFonts.Bold, 10, PdfPaper.Accent, SKTextAlign.Right);
        paper.Rule(94, 1.6f);
        paper.Y = 104;
        Pair("For", quote.Order.Customer, PageFonts.Bold);
        Pair("Received", Invariant($"{quote.Order.Received:yyyy-MM-dd}"), PageFonts.Regular);
        if (WantedBy is { } wanted)
            Pair("Wanted by", wanted, PageFonts.Regular);
        if (quote.Order.Note is { Length: > 0 } note)
            Pair("Your note", note, PageFonts.Regular);
        paper.Y += 6;
    }

    // A day where all items have the same; else each day with its items.
    private string? WantedBy => quote.Order.Items.GroupBy(i => i.Due).OrderBy(g => g.Key).ToList() switch
    {
        [] => null,
        [var one] => Invariant($"{one.Key:yyyy-MM-dd}"),
        var several => string.Join("; ", several.Select(g => Invariant($"{g.Key:yyyy-MM-dd}: {string.Join(", ", g.Select(i => i.Id))}"))),
    };

    private void Pair(string name, string value, SKTypeface face)
    {
        paper.Text(name, PdfPaper.Left, paper.Y + 10, PageFonts.Regular, 8, PdfPaper.Quiet);
        paper.Paragraph(value, Text, PdfPaper.Right - Text, 10, face);
        paper.Y += 2;
    }

    private void Lines()
    {
        ColumnHeads();
        foreach (QuoteLine line in quote.Lines.Where(l => l.Price is not null))
            Line(line);
        paper.Rule(paper.Y, 0.6f);
    }

    private void ColumnHeads()
    {
        paper.Y += 8;
        paper.Text("item", PdfPaper.Left, paper.Y, PageFonts.Regular, 7, PdfPaper.Quiet);
        paper.Text("what", Text, paper.Y, PageFonts.Regular, 7, PdfPaper.Quiet);
        paper.Text("pieces", Pieces, paper.Y, PageFonts.Regular, 7, PdfPaper.Quiet, SKTextAlign.Right);
        paper.Text("each", Pieces + 66, paper.Y, PageFonts.Regular, 7, PdfPaper.Quiet, SKTextAlign.Right);
        paper.Text(quote.Currency, PdfPaper.Right, paper.Y, PageFonts.Regular, 7, PdfPaper.Quiet, SKTextAlign.Right);
        paper.Y += 4;
    }

    private void Line(QuoteLine line)
    {
        const float size = 9.4f;
        float wide = Pieces - Text - 44;
        paper.Need((PdfPaper.Lines(line.Text, wide, PageFonts.Regular, size).Count * size * 1.38f) + (line.Made is null ? 12 : 38));
        paper.Rule(paper.Y, 0.4f, color: PdfPaper.Faint);
        float y = paper.Y + 14;
        paper.Text(line.ItemId, PdfPaper.Left, y, PageFonts.Mono, 8.4f, PdfPaper.Ink);
        paper.Text(Invariant($"{line.Pieces}"), Pieces, y, PageFonts.Regular, size, PdfPaper.Ink, SKTextAlign.Right);
        if (line.Pieces > 1)
            paper.Text(Invariant($"≈ {line.Price!.Value.Units / line.Pieces:0.00}"), Pieces + 66, y, PageFonts.Regular, 8, PdfPaper.Quiet, SKTextAlign.Right);
        paper.Text(Money(line.Price!.Value), PdfPaper.Right, y, PageFonts.Regular, size, PdfPaper.Ink, SKTextAlign.Right);
        paper.Y += 4.6f;
        paper.Paragraph(line.Text, Text, wide, size);
        if (line.MadeInWords is { } made)
            paper.Paragraph(made, Text, wide, 8.6f);
        paper.Y += 6;
    }

    private void Sums()
    {
        paper.Need(74);
        paper.Y += 4;
        if (quote.SmallOrder.Cents > 0)
            Sum("Small order", quote.SmallOrder, 9.6f, PageFonts.Regular, PageFonts.Regular);
        Sum("Net", quote.Net, 9.6f, PageFonts.Regular, PageFonts.Regular);
        Sum(Invariant($"Tax {quote.TaxPercent:0.##} %"), quote.Tax, 9.6f, PageFonts.Regular, PageFonts.Regular);
        paper.Rule(paper.Y + 3, 1.6f, Pieces - 60);
        paper.Y += 7;
        Sum(Invariant($"Total {quote.Currency}"), quote.Gross, 13, PageFonts.Bold, PageFonts.Bold);
        paper.Y += 6;
    }

    private void Sum(string name, Laydown.Measures.Money amount, float size, SKTypeface words, SKTypeface figures)
    {
        paper.Text(name, Pieces - 60, paper.Y + size + 1, words, size, PdfPaper.Ink);
        paper.Text(Money(amount), PdfPaper.Right, paper.Y + size + 1, figures, size, PdfPaper.Ink, SKTextAlign.Right);
        paper.Y += size + 7;
    }

    private void Breaks()
    {
        List<QuoteLine> lines = [.. quote.Lines.Where(l => l.Breaks is { Count: > 0 })];
        if (lines.Count == 0)
            return;
        Section("Other quantities", 60);
        foreach (QuoteLine line in lines)
        {
            paper.Need(30 + (14 * line.Breaks!.Count));
            paper.Paragraph(line.Text, Text, PdfPaper.Right - Text, 9.2f, PageFonts.Bold);
            foreach (QuoteBreak other in line.Breaks)
                Break(other);
            paper.Y += 6;
        }

        paper.Paragraph("Each quantity printed by itself, without tax.", Text, PdfPaper.Right - Text, 8.6f);
    }

    private void Break(QuoteBreak other)
    {
        float y = paper.Y + 11;
        paper.Text(Counted(other.Pieces), Text, y, PageFonts.Regular, 9.2f, PdfPaper.Ink);
        if (other is { Price: { } price, Each: { } each })
        {
            paper.Text(Invariant($"≈ {Money(each)} each"), Pieces + 66, y, PageFonts.Regular, 8, PdfPaper.Quiet, SKTextAlign.Right);
            paper.Text(Money(price), PdfPaper.Right, y, PageFonts.Regular, 9.2f, PdfPaper.Ink, SKTextAlign.Right);
        }
        else
        {
            paper.Text("on request", PdfPaper.Right, y, PageFonts.Regular, 9.2f, PdfPaper.Quiet, SKTextAlign.Right);
        }

        paper.Y += 14;
    }

    private void Held()
    {
        List<QuoteLine> held = [.. quote.Lines.Where(l => l.Price is null)];
        if (held.Count == 0)
            return;
        Section("Held back, not priced", 60);
        foreach (QuoteLine line in held)
        {
            float wide = PdfPaper.Right - Text - 10;
            paper.Need(34);
            float top = paper.Y;
            paper.Paragraph(Invariant($"{line.ItemId} · {line.Text} · {Counted(line.Pieces)}"), Text + 10, wide, 9.2f);
            paper.Paragraph(line.Note ?? "Not planned yet.", Text + 10, wide, 9.2f, PageFonts.Bold, PdfPaper.Stop);
            if (paper.Y > top)
                paper.Bar(Text, top + 2, 3, paper.Y - top - 2, PdfPaper.Stop);
            paper.Y += 6;
        }
    }

    private void Terms()
    {
        Section("Holds for this quote", 60);
        List<string> terms =
        [
            Invariant($"Prices hold until {quote.ValidUntil:yyyy-MM-dd} for the files, sizes and quantities named here. Another file, size or quantity is another quote."),
            "Colour is agreed by a printed proof on the stock itself; a screen shows it only roughly. Fire classes of stocks are for the unprinted material.",
        ];
        if (quote.Order.Items.Any(i => i.Build.Lit || i.Build.DayNight))
            terms.Add(Cautions.Lit + " " + Cautions.Rule);
        foreach (string term in terms)
        {
            paper.Paragraph(term, Text, PdfPaper.Right - Text, 8.6f);
            paper.Y += 3;
        }

        paper.Need(60);
        paper.Y += 34;
        paper.Line(Text, paper.Y, Text + 190, paper.Y, 0.5f);
        paper.Line(Text + 210, paper.Y, PdfPaper.Right, paper.Y, 0.5f);
        paper.Text("accepted by", Text, paper.Y + 8, PageFonts.Regular, 6.4f, PdfPaper.Quiet);
        paper.Text("day", Text + 210, paper.Y + 8, PageFonts.Regular, 6.4f, PdfPaper.Quiet);
    }

    private void Section(string name, float need)
    {
        paper.Y += 8;
        paper.Need(need);
        paper.Rule(paper.Y, 0.5f);
        float x = PdfPaper.Left, y = paper.Y + 14;
        foreach (string line in PdfPaper.Lines(name, Text - PdfPaper.Left - 8, PageFonts.Bold, 9.6f))
        {
            paper.Text(line, x, y, PageFonts.Bold, 9.6f, PdfPaper.Ink);
            y += 12;
        }

        paper.Y += 5;
    }

    private static string Counted(int pieces) => pieces == 1 ? "1 piece" : Invariant($"{pieces} pieces");

    // No sign between thousands, so that a figure copied from the paper is a number everywhere.
    private static string Money(Laydown.Measures.Money amount) => Invariant($"{amount.Units:0.00}");
}
