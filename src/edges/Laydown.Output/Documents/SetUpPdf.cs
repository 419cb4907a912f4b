using Laydown.Measures;
using SkiaSharp;

namespace Laydown.Output.Documents;

/// <summary>Draws a set-up sheet as A4 PDF: a printed form to be filled in with a pen.</summary>
internal sealed class SetUpPdf
{
    private const float Body = 8.6f;
    private readonly SetUpContent content;
    private readonly PdfPaper paper;

    private SetUpPdf(SetUpContent content, PdfPaper paper) => (this.content, this.paper) = (content, paper);

    /// <summary>The sheet as PDF.</summary>
    internal static byte[] Make(SetUpContent content) => PdfPaper.Make(
        Invariant($"Set-up sheet {content.RunId}"), content.ShopName,
        Invariant($"{content.RunId} · {content.Subject}{(content.Invented.Length > 0 ? " · " : "")}{content.Invented}"),
        paper => new SetUpPdf(content, paper).All());

    private void All()
    {
        Head();
        KeyFigures();
        Release();
        Measure();
        Belt();
        Faces();
        Layers();
        Inks();
        Checks();
        Cautions();
        SignOff();
        Work();
        Why();
    }

    private void Head()
    {
        const float qr = 62;
        paper.Text("SET-UP SHEET", PdfPaper.Left, 44, PageFonts.Bold, 8, PdfPaper.Quiet);
        paper.Text(content.ShopName, PdfPaper.Left + 72, 44, PageFonts.Regular, 8, PdfPaper.Quiet);
        paper.Text(content.RunId, PdfPaper.Left - 1, 76, PageFonts.MonoBold, 30, PdfPaper.Ink);
        float size = 11;
        while (size > 8 && PdfPaper.Measure(content.Subject, PageFonts.Bold, size) > PdfPaper.Right - qr - 20 - PdfPaper.Left)
            size -= 0.5f;
        paper.Text(content.Subject, PdfPaper.Left, 95, PageFonts.Bold, size, PdfPaper.Ink);
        QrMatrix.Of(content.PagePath).Draw(paper.Canvas, PdfPaper.Right - qr, 34, qr);
        paper.Text(content.Due, PdfPaper.Right - qr - 16, 44, PageFonts.Mono, 9, PdfPaper.Ink, SKTextAlign.Right);
        paper.Rule(104, 1.6f);
        paper.Y = 104;
    }

    private void KeyFigures()
    {
        const int columns = 4;
        const float high = 52;
        float wide = (PdfPaper.Right - PdfPaper.Left) / columns;
        for (int i = 0; i < content.Figures.Count; i++)
        {
            KeyFigure figure = content.Figures[i];
            float x = PdfPaper.Left + (i % columns * wide), y = paper.Y + (i / columns * high);
            float pad = i % columns == 0 ? 0 : 9;
            if (i % columns > 0)
                paper.Line(x, y + 6, x, y + high - 6);
            else if (i > 0)
                paper.Rule(y);
            paper.Text(figure.Name, x + pad, y + 14, PageFonts.Regular, 7, PdfPaper.Quiet);
            Value(figure, x + pad, y + 34, wide - pad - 8, i == 0 ? PdfPaper.Accent : PdfPaper.Ink);
            float note = y + 43;
            foreach (string line in PdfPaper.Lines(figure.Note, wide - pad - 6, PageFonts.Regular, 5.9f).Take(2))
            {
                paper.Text(line, x + pad, note, PageFonts.Regular, 5.9f, PdfPaper.Quiet);
                note += 6.8f;
            }
        }

        paper.Y += ((content.Figures.Count + columns - 1) / columns * high) + 2;
        paper.Rule(paper.Y, 1.6f);
        paper.Y += 2;
    }

    private void Value(KeyFigure figure, float x, float y, float wide, SKColor color)
    {
        float size = 19;
        while (size > 9 && PdfPaper.Measure(figure.Value, PageFonts.Bold, size) > wide - (figure.Unit.Length * 6))
            size -= 0.5f;
        float width = paper.Text(figure.Value, x, y, PageFonts.Bold, size, color);
        paper.Text(figure.Unit, x + width + 4, y, PageFonts.Regular, 9, color);
    }

    private void Release()
    {
        if (content.Refusals.Count == 0)
            return;
        Section("Release", 30);
        float top = paper.Y;
        paper.Paragraph("Do not release as it stands:", PdfPaper.Column + 10, PdfPaper.Right - PdfPaper.Column - 10, 10.5f, PageFonts.Bold, PdfPaper.Stop);
        foreach (string refusal in content.Refusals)
            paper.Paragraph(refusal, PdfPaper.Column + 10, PdfPaper.Right - PdfPaper.Column - 10, 9.4f);
        if (paper.Y > top)
            paper.Bar(PdfPaper.Column, top + 1, 3.5f, paper.Y - top - 1, PdfPaper.Stop);
        paper.Y += 3;
    }

    private void Measure()
    {
        Section("Measure first", 104);
        foreach (string sentence in content.Measure)
            paper.Paragraph(sentence, PdfPaper.Column, PdfPaper.Right - PdfPaper.Column, Body);
        Boxes();
        LetGo();
    }

    // Readings of the thickness: as measured, or empty to be filled in.
    private void Boxes()
    {
        int boxes = content.MeasurePlaces + 2;
        float wide = (PdfPaper.Right - PdfPaper.Column) / boxes;
        paper.Need(40);
        paper.Y += 5;
        for (int i = 0; i < boxes; i++)
        {
            bool own = i >= content.MeasurePlaces;
            string name = i < content.MeasurePlaces ? Invariant($"point {i + 1}") : i == content.MeasurePlaces ? "highest" : "head height set";
            float x = PdfPaper.Column + (i * wide);
            paper.Box(x, paper.Y, wide - 5, 24, own ? 1.3f : 0.5f, own ? PdfPaper.Accent : PdfPaper.Ink);
            paper.Text(name, x + 3, paper.Y + 7.5f, PageFonts.Regular, 5.8f, own ? PdfPaper.Accent : PdfPaper.Quiet);
            paper.Text("mm", x + wide - 9, paper.Y + 21, PageFonts.Regular, 5.8f, PdfPaper.Quiet, SKTextAlign.Right);
            if (content.LetGo is { } letGo)
            {
                string value = own ? (i == content.MeasurePlaces ? letGo.Highest : letGo.HeadHeight) : letGo.Points.ElementAtOrDefault(i) ?? "";
                paper.Text(value, x + 3, paper.Y + 20.5f, PageFonts.MonoBold, 9, PdfPaper.Ink);
            }
        }

        paper.Y += 31;
    }

    private void LetGo()
    {
        if (content.LetGo is { } letGo)
        {
            foreach (NamedValue row in letGo.Rows)
                Row(row, 74);
            return;
        }

        paper.Need(34);
        string[] lines = ["measured by", "highest edge, mm", "checked by another person", "who found, highest, mm"];
        float quarter = (PdfPaper.Right - PdfPaper.Column) / lines.Length;
        for (int i = 0; i < lines.Length; i++)
        {
            float x = PdfPaper.Column + (i * quarter), y = paper.Y + 15;
            paper.Line(x, y, x + quarter - 8, y, 0.5f);
            paper.Text(lines[i], x, y + 7.5f, PageFonts.Regular, 6, PdfPaper.Quiet);
        }

        paper.Y += 27;
    }

    private void Belt()
    {
        Section("On the belt", 150);
        paper.Draw(content.BeltDrawing, PdfPaper.Column, PdfPaper.Right - PdfPaper.Column, content.Refusals.Count > 0 ? 250 : 310);
        foreach (NamedValue row in content.Belt)
            Row(row, 74);
    }

    private void Faces()
    {
        if (content.FacesDrawing is not { } drawing)
            return;
        Section("Both faces", 280);
        paper.Draw(drawing, PdfPaper.Column, PdfPaper.Right - PdfPaper.Column, 230);
        foreach (NamedValue row in content.Faces)
            Row(row, 74);
    }

    // At this scale the words of the section are as large as those of the sheet, whether one panel stands there or two.
    private const float LayersScale = 0.56f;

    private void Layers()
    {
        Section("Layers", 300);
        paper.Draw(content.LayersDrawing, PdfPaper.Column, PdfPaper.Right - PdfPaper.Column, 420, LayersScale);
        foreach (NamedValue layer in content.Layers)
            Row(layer, 74);
        foreach (string because in content.LayersBecause)
            paper.Paragraph(because, PdfPaper.Column, PdfPaper.Right - PdfPaper.Column, 7.2f, color: PdfPaper.Quiet);
    }

    private void Inks()
    {
        Section("Ink", 34 + (12 * content.Inks.Count));
        float[] right = [PdfPaper.Column + 152, PdfPaper.Column + 196, PdfPaper.Column + 246, PdfPaper.Column + 296];
        string[] heads = ["pictures ml", "set-up ml", "in tank ml", "after ml"];
        paper.Text("ink · channels", PdfPaper.Column, paper.Y + 7, PageFonts.Regular, 6.2f, PdfPaper.Quiet);
        for (int i = 0; i < heads.Length; i++)
            paper.Text(heads[i], right[i], paper.Y + 7, PageFonts.Regular, 6.2f, PdfPaper.Quiet, SKTextAlign.Right);
        paper.Y += 10;
        foreach (InkRow row in content.Inks)
            InkLine(row, right);
        paper.Y += 2;
    }

    private void InkLine(InkRow row, float[] right)
    {
        const float high = 12.5f;
        paper.Need(high);
        paper.Rule(paper.Y, 0.3f, PdfPaper.Column, color: PdfPaper.Faint);
        float y = paper.Y + 9;
        bool low = row.AfterMl < row.LowMl;
        float name = paper.Text(row.Name, PdfPaper.Column, y, PageFonts.Bold, Body, PdfPaper.Ink);
        paper.Text(row.Channels, PdfPaper.Column + name + 5, y, PageFonts.Regular, 6.5f, PdfPaper.Quiet);
        string[] values = [Invariant($"{row.PrintedMl:0.0}"), Invariant($"{row.SetUpMl:0.0}"), Invariant($"{row.LevelMl:0}"), Invariant($"{row.AfterMl:0}")];
        for (int i = 0; i < values.Length; i++)
            paper.Text(values[i], right[i], y, PageFonts.Regular, Body, i == 3 && low ? PdfPaper.Stop : PdfPaper.Ink, SKTextAlign.Right);
        paper.Text(row.Note, right[^1] + 10, y, low ? PageFonts.Bold : PageFonts.Regular, 6.8f, low ? PdfPaper.Stop : PdfPaper.Quiet);
        paper.Y += high;
    }

    private void Checks()
    {
        Section("First piece", 60);
        foreach (string check in content.Checks)
        {
            float high = PdfPaper.Lines(check, PdfPaper.Right - PdfPaper.Column - 18, PageFonts.Regular, Body).Count * Body * 1.38f;
            paper.Need(Math.Max(14, high + 2));
            paper.Box(PdfPaper.Column, paper.Y + 1.5f, 9, 9, 0.7f);
            paper.Paragraph(check, PdfPaper.Column + 18, PdfPaper.Right - PdfPaper.Column - 18, Body);
            paper.Y += 2.4f;
        }
    }

    private void Cautions()
    {
        Section("Cautions", 70);
        for (int i = 0; i < content.Cautions.Count; i++)
        {
            bool rule = i == content.Cautions.Count - 1;
            paper.Paragraph(content.Cautions[i], PdfPaper.Column, PdfPaper.Right - PdfPaper.Column, rule ? 8.6f : 7.8f, rule ? PageFonts.Bold : PageFonts.Regular);
            paper.Y += 1.8f;
        }
    }

    private void SignOff()
    {
        Section("Sign-off", 112);
        float half = (PdfPaper.Right - PdfPaper.Column - 16) / 2;
        string[] lines = ["set up by, time", "first piece released by, time", "lot of ink and of stock", "sheets good / spoilt"];
        for (int i = 0; i < lines.Length; i++)
        {
            float x = PdfPaper.Column + (i % 2 * (half + 16)), y = paper.Y + 20 + (i / 2 * 28);
            paper.Line(x, y, x + half, y, 0.5f);
            paper.Text(lines[i], x, y + 7.5f, PageFonts.Regular, 6, PdfPaper.Quiet);
        }

        paper.Y += 62;
        paper.Text("notes for the next time: gap, speed, lamp, white, what worked", PdfPaper.Column, paper.Y + 6, PageFonts.Regular, 6, PdfPaper.Quiet);
        for (int i = 1; i <= 2; i++)
            paper.Rule(paper.Y + 6 + (i * 16), 0.3f, PdfPaper.Column, color: PdfPaper.Faint);
        paper.Y += 44;
    }

    private void Work()
    {
        Section("Work in this run", 60);
        foreach (NamedValue item in content.Items)
            Row(item, 74);
        foreach (Drawing sheet in content.SheetDrawings)
        {
            paper.Need(170);
            paper.Y += 4;
            paper.Text(sheet.Title, PdfPaper.Column, paper.Y + 7, PageFonts.Regular, 7, PdfPaper.Quiet);
            paper.Y += 10;
            paper.Draw(sheet, PdfPaper.Column, PdfPaper.Right - PdfPaper.Column, 250);
        }

        Section("Mode", 40);
        foreach (string reason in content.Mode)
            paper.Paragraph(reason, PdfPaper.Column, PdfPaper.Right - PdfPaper.Column, 7.6f);
    }

    private void Why()
    {
        Section("Why these numbers", 40);
        foreach (Figure figure in content.Why)
        {
            paper.Need(20);
            paper.Text(figure.Name, PdfPaper.Column, paper.Y + 7, PageFonts.Bold, 6.8f, PdfPaper.Ink);
            paper.Text(Invariant($"{figure.Value:0.###} {figure.Unit}"), PdfPaper.Right, paper.Y + 7, PageFonts.Regular, 7, PdfPaper.Ink, SKTextAlign.Right);
            paper.Y += 9;
            paper.Paragraph(Invariant($"{figure.Because} — {figure.Source}"), PdfPaper.Column, PdfPaper.Right - PdfPaper.Column, 6.2f, color: PdfPaper.Quiet);
            paper.Y += 1.5f;
        }
    }

    private void Section(string name, float need)
    {
        paper.Y += 7;
        paper.Need(need);
        paper.Rule(paper.Y, 0.5f);
        IReadOnlyList<string> lines = PdfPaper.Lines(name, PdfPaper.Column - PdfPaper.Left - 10, PageFonts.Bold, 9.6f);
        for (int i = 0; i < lines.Count; i++)
            paper.Text(lines[i], PdfPaper.Left, paper.Y + 13 + (i * 12), PageFonts.Bold, 9.6f, PdfPaper.Ink);
        paper.Y += 4.5f;
    }

    private void Row(NamedValue row, float nameWidth)
    {
        float wide = PdfPaper.Right - PdfPaper.Column - nameWidth;
        paper.Need(PdfPaper.Lines(row.Value, wide, PageFonts.Regular, Body).Count * Body * 1.38f);
        float top = paper.Y;
        paper.Text(row.Name, PdfPaper.Column, top + Body, PageFonts.Bold, PdfPaper.Measure(row.Name, PageFonts.Bold, Body) > nameWidth - 4 ? 6.6f : Body, PdfPaper.Ink);
        paper.Paragraph(row.Value, PdfPaper.Column + nameWidth, wide, Body);
        paper.Y = Math.Max(paper.Y, top + (Body * 1.38f)) + 0.6f;
    }
}
