using System.Net;
using System.Text;
using Laydown.Measures;

namespace Laydown.Output.Documents;

/// <summary>Writes a set-up sheet as one page that needs nothing else: fonts, drawings and code inside, no scripts.</summary>
/// <remarks>Made for a tablet at arm's length and gloved hands: large figures, boxes of 48 px to tick; printed, it is an A4 form.</remarks>
internal sealed class SetUpHtml
{
    private readonly StringBuilder page = new();
    private readonly SetUpContent content;

    private SetUpHtml(SetUpContent content) => this.content = content;

    /// <summary>The page.</summary>
    internal static string Make(SetUpContent content) => new SetUpHtml(content).All();

    private string All()
    {
        page.Append("<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        page.Append(Invariant($"<title>Set-up sheet {Safe(content.RunId)}</title>\n<style>\n{SetUpStyle.Fonts}{SetUpStyle.Sheet}</style></head>\n<body><main>\n"));
        Head();
        KeyFigures();
        Release();
        Section("Measure first", "measure", Measure);
        Section("On the belt", "belt", () => Drawn(content.BeltDrawing, content.Belt));
        if (content.FacesDrawing is { } faces)
            Section("Both faces", "faces", () => Drawn(faces, content.Faces));
        Section("Layers", "layers", Layers);
        Section("Ink", "ink", Inks);
        Section("First piece", "first", () => Ticks("first", content.Checks));
        Section("Cautions", "cautions", Cautions);
        Section("Sign-off", "sign", SignOff);
        Section("Work in this run", "work", Work);
        Section("Mode", "mode", () => Paragraphs(content.Mode));
        Section("Why these numbers", "why", Why);
        page.Append(Invariant($"<footer><span>{Safe(content.RunId)} · {Safe(content.Subject)}</span><span>{Safe(content.Invented)}</span></footer>\n</main></body></html>\n"));
        return page.ToString();
    }

    private void Head()
    {
        QrMatrix code = QrMatrix.Of(content.PagePath);
        page.Append(Invariant($"<header><div><p class=\"kind\"><b>Set-up sheet</b> {Safe(content.ShopName)}</p><h1>{Safe(content.RunId)}</h1>"));
        page.Append(Invariant($"<p class=\"subject\">{Safe(content.Subject)} <span class=\"due\">{Safe(content.Due)}</span></p></div>"));
        page.Append(Invariant($"<svg class=\"qr\" role=\"img\" aria-label=\"Code of this run's page, {Safe(content.PagePath)}\" viewBox=\"-4 -4 {code.Side + 8} {code.Side + 8}\" shape-rendering=\"crispEdges\">"));
        page.Append(Invariant($"<path fill=\"#fff\" d=\"M-4 -4h{code.Side + 8}v{code.Side + 8}h-{code.Side + 8}z\"/><path d=\"{code.PathData()}\"/></svg></header>\n"));
    }

    private void KeyFigures()
    {
        page.Append("<dl class=\"figures\">\n");
        foreach (KeyFigure figure in content.Figures)
        {
            page.Append(Invariant($"<div><dt>{Safe(figure.Name)}</dt><dd><b>{Safe(figure.Value)}</b> {Safe(figure.Unit)}<small>{Safe(figure.Note)}</small></dd></div>\n"));
        }

        page.Append("</dl>\n");
    }

    private void Release()
    {
        if (content.Refusals.Count == 0)
            return;
        page.Append("<section class=\"refused\" aria-labelledby=\"release\"><h2 id=\"release\">Do not release as it stands</h2><div>");
        Paragraphs(content.Refusals);
        page.Append("</div></section>\n");
    }

    private void Measure()
    {
        Paragraphs(content.Measure);
        page.Append("<div class=\"readings\">");
        for (int i = 1; i <= content.MeasurePlaces; i++)
            Reading(Invariant($"point {i}"), false);
        Reading("highest", true);
        Reading("head height set", true);
        page.Append("</div>\n");
    }

    private void Reading(string name, bool own) => page.Append(Invariant(
        $"<label{(own ? " class=\"own\"" : "")}>{name}<span><input inputmode=\"decimal\" autocomplete=\"off\"> mm</span></label>"));

    private void Drawn(Drawing drawing, IReadOnlyList<NamedValue> rows)
    {
        page.Append(Invariant($"<figure>{drawing.Svg}</figure>\n"));
        Rows(rows);
    }

    private void Rows(IReadOnlyList<NamedValue> rows)
    {
        page.Append("<dl class=\"rows\">");
        foreach (NamedValue row in rows)
            page.Append(Invariant($"<dt>{Safe(row.Name)}</dt><dd>{Safe(row.Value)}</dd>\n"));
        page.Append("</dl>\n");
    }

    private void Layers()
    {
        Drawn(content.LayersDrawing, content.Layers);
        page.Append("<div class=\"because\">");
        Paragraphs(content.LayersBecause);
        page.Append("</div>\n");
    }

    private void Inks()
    {
        page.Append("<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"Ink\"><table><thead><tr><th scope=\"col\">ink, channels</th><th scope=\"col\">pictures ml</th><th scope=\"col\">set-up ml</th><th scope=\"col\">in tank ml</th><th scope=\"col\">after ml</th><th scope=\"col\">to do</th></tr></thead><tbody>\n");
        foreach (InkRow row in content.Inks)
        {
            string low = row.AfterMl < row.LowMl ? " class=\"low\"" : "";
            page.Append(Invariant($"<tr{low}><th scope=\"row\">{Safe(row.Name)} <small>{Safe(row.Channels)}</small></th><td>{row.PrintedMl:0.0}</td><td>{row.SetUpMl:0.0}</td><td>{row.LevelMl:0}</td><td>{row.AfterMl:0}</td><td class=\"note\">{Safe(row.Note)}</td></tr>\n"));
        }

        page.Append("</tbody></table></div>\n");
    }

    private void Ticks(string group, IReadOnlyList<string> lines)
    {
        page.Append("<ul class=\"ticks\">");
        for (int i = 0; i < lines.Count; i++)
            page.Append(Invariant($"<li><input type=\"checkbox\" id=\"{group}-{i}\"><label for=\"{group}-{i}\">{Safe(lines[i])}</label></li>\n"));
        page.Append("</ul>\n");
    }

    private void Cautions()
    {
        page.Append("<ul class=\"cautions\">");
        foreach (string caution in content.Cautions)
            page.Append(Invariant($"<li>{Safe(caution)}</li>\n"));
        page.Append("</ul>\n");
    }

    private void SignOff()
    {
        page.Append("<div class=\"sign\">");
        foreach (string line in new[] { "set up by, time", "first piece released by, time", "lot of ink and of stock", "sheets good / spoilt" })
            page.Append(Invariant($"<label><input autocomplete=\"off\">{line}</label>"));
        page.Append("<label class=\"notes\"><textarea rows=\"3\"></textarea>notes for the next time: gap, speed, lamp, white, what worked</label></div>\n");
    }

    private void Work()
    {
        Rows(content.Items);
        foreach (Drawing sheet in content.SheetDrawings)
            page.Append(Invariant($"<figure><figcaption>{Safe(sheet.Title)}</figcaption>{sheet.Svg}</figure>\n"));
    }

    private void Why()
    {
        page.Append("<details><summary>Formula, inputs and source of each number</summary><dl class=\"why\">");
        foreach (Figure figure in content.Why)
            page.Append(Invariant($"<dt>{Safe(figure.Name)} <b>{figure.Value:0.###} {Safe(figure.Unit)}</b></dt><dd>{Safe(figure.Because)} — {Safe(figure.Source)}</dd>\n"));
        page.Append("</dl></details>\n");
    }

    private void Section(string name, string id, Action body)
    {
        page.Append(Invariant($"<section aria-labelledby=\"{id}\"><h2 id=\"{id}\">{name}</h2><div>"));
        body();
        page.Append("</div></section>\n");
    }

    private void Paragraphs(IReadOnlyList<string> lines)
    {
        foreach (string line in lines)
            page.Append(Invariant($"<p>{Safe(line)}</p>"));
    }

    private static string Safe(string text) => WebUtility.HtmlEncode(text);
}
