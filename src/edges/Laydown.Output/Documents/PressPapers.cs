using Laydown.Shop.Press;

namespace Laydown.Output.Documents;

/// <summary>Labels of lots as A4 PDF: two beside each other, five below, to be cut apart.</summary>
public sealed class PressPapers : IPressPapers
{
    private const int Across = 2, Down = 5;
    private const float Gap = 8, Code = 82;

    /// <inheritdoc/>
    /// <exception cref="ArgumentException">No label was given.</exception>
    public byte[] Labels(string shopName, IReadOnlyList<StockLabel> labels)
    {
        if (labels.Count == 0)
            throw new ArgumentException("Labels: found none; wanted at least one.", nameof(labels));
        return PdfPaper.Make("Stock labels", shopName, Invariant($"{shopName} · stock labels"), paper => Draw(paper, shopName, labels));
    }

    private static void Draw(PdfPaper paper, string shopName, IReadOnlyList<StockLabel> labels)
    {
        float width = (PdfPaper.Right - PdfPaper.Left - Gap) / Across, height = (PdfPaper.Foot - 48 - (Gap * (Down - 1))) / Down;
        for (int i = 0; i < labels.Count; i++)
        {
            int place = i % (Across * Down);
            if (place == 0 && i > 0)
                paper.Need(PdfPaper.Height);
            Label(paper, shopName, labels[i], PdfPaper.Left + (place % Across * (width + Gap)), 36 + (place / Across * (height + Gap)), width, height);
        }
    }

    private static void Label(PdfPaper paper, string shopName, StockLabel label, float x, float y, float width, float height)
    {
        paper.Box(x, y, width, height, 0.5f, PdfPaper.Faint);
        QrMatrix.Of(label.PagePath).Draw(paper.Canvas, x + width - Code - 14, y + 14, Code);
        float words = width - Code - 42;
        paper.Text(label.LotId, x + 13, y + 36, PageFonts.MonoBold, 24, PdfPaper.Ink);
        float at = y + 54;
        foreach (string line in PdfPaper.Lines(label.Name, words, PageFonts.Bold, 10).Take(3))
        {
            paper.Text(line, x + 14, at, PageFonts.Bold, 10, PdfPaper.Ink);
            at += 13;
        }

        paper.Text(label.Size, x + 14, at + 3, PageFonts.Mono, 11, PdfPaper.Ink);
        paper.Text(PdfPaper.Lines(label.Place, width - 28, PageFonts.Regular, 9)[0], x + 14, y + height - 28, PageFonts.Regular, 9, PdfPaper.Ink);
        string foot = Invariant($"{label.Since:yyyy-MM-dd}{(label.Note is null ? "" : " · " + label.Note)} · {shopName}");
        paper.Text(PdfPaper.Lines(foot, width - 28, PageFonts.Regular, 7.5f)[0], x + 14, y + height - 13, PageFonts.Regular, 7.5f, PdfPaper.Quiet);
    }
}
