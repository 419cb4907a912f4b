using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Laydown.Measures;

namespace Laydown.Formats.PdfWriting;

/// <summary>Writes a PDF 1.6 file page by page onto a stream: layers with processing steps, named separations, embedded fonts, pictures.</summary>
/// <remarks>Streams: a page or picture is on its way as soon as it is added. The same calls give the same bytes. Not safe for several threads.</remarks>
public sealed class PdfFile
{
    private readonly PdfObjects objects;
    private readonly List<int> pages = [];
    private readonly List<PdfFont> fonts = [];
    private readonly Dictionary<PdfLayer, int> layers = [];
    private readonly Dictionary<PdfSpot, int> spots = [];
    private readonly string title;
    private readonly DateTimeOffset made;
    private readonly int root;
    private readonly int tree;
    private readonly int? rgbProfile;
    private bool closed;

    /// <summary>Starts a file; <paramref name="stream"/> stays open.</summary>
    /// <param name="stream">Where to; need not be able to seek.</param>
    /// <param name="title">Title of the document.</param>
    /// <param name="made">Instant written as creation date.</param>
    /// <param name="rgbProfile">ICC profile of all RGB colours and pictures; null writes them without profile, as DeviceRGB.</param>
    public PdfFile(Stream stream, string title, DateTimeOffset made, byte[]? rgbProfile)
    {
        this.title = Bounds.Named(title);
        this.made = made;
        objects = new(stream);
        root = objects.Reserve();
        tree = objects.Reserve();
        if (rgbProfile is not null)
            this.rgbProfile = objects.AddStream("/N 3 /Alternate /DeviceRGB", deflate: true, s => s.Write(rgbProfile));
    }

    /// <summary>The colour space of RGB in this file.</summary>
    internal string RgbSpace => rgbProfile is { } id ? Invariant($"[/ICCBased {id} 0 R]") : "/DeviceRGB";

    /// <summary>A font whose shown glyphs are embedded when the file is closed.</summary>
    public PdfFont AddFont(TrueTypeFont font, string name)
    {
        fonts.Add(new(objects.Reserve(), font, Bounds.Named(name)));
        return fonts[^1];
    }

    /// <summary>A font that is only named and not embedded, in WinAnsi encoding: for files with that flaw.</summary>
    public PdfFont AddNamedFont(string name) => new(
        objects.Add(Invariant($"<< /Type /Font /Subtype /Type1 /BaseFont {PdfText.Name(name)} /Encoding /WinAnsiEncoding >>")), null, name);

    /// <summary>A JPEG as it is.</summary>
    /// <param name="jpeg">The bytes.</param>
    /// <param name="width">Pixels across.</param>
    /// <param name="height">Pixels down.</param>
    public PdfImage AddRgbJpeg(byte[] jpeg, int width, int height) =>
        new(objects.AddStream(ImageEntries(width, height, RgbSpace) + " /Filter /DCTDecode", deflate: false, s => s.Write(jpeg)));

    /// <summary>Pixels of red, green, blue and alpha, row after row from the top; alpha becomes a soft mask.</summary>
    /// <exception cref="ArgumentException">The length is not 4 × width × height.</exception>
    public PdfImage AddRgba(byte[] rgba, int width, int height)
    {
        Demand(rgba.Length, 4 * width * height);
        int mask = objects.AddStream(ImageEntries(width, height, "/DeviceGray"), deflate: true, s => Every(s, rgba, 3, 1));
        return new(objects.AddStream(ImageEntries(width, height, RgbSpace) + Invariant($" /SMask {mask} 0 R"), deflate: true, s => Every(s, rgba, 0, 3)));
    }

    /// <summary>A picture in one named separation: 0 = none, 255 = full.</summary>
    /// <exception cref="ArgumentException">The length is not width × height.</exception>
    public PdfImage AddSpotImage(PdfSpot spot, byte[] tints, int width, int height)
    {
        Demand(tints.Length, width * height);
        return new(objects.AddStream(ImageEntries(width, height, Invariant($"{SpotSpace(spot)} 0 R")), deflate: true, s => s.Write(tints)));
    }

    /// <summary>Draws a page.</summary>
    public void AddPage(PdfPageSize size, Action<PdfCanvas> draw)
    {
        double perMm = 72 / 25.4 / Bounds.Within(size.UserUnit, 1, 75_000);
        Bounds.Within(size.Media.WidthMm * perMm, 3, 14_400, nameof(size));
        Bounds.Within(size.Media.HeightMm * perMm, 3, 14_400, nameof(size));
        PdfCanvas canvas = new(this);
        draw(canvas);
        string content = Invariant($"{PdfText.Number(perMm)} 0 0 {PdfText.Number(perMm)} 0 0 cm\n") + canvas.Finish();
        int stream = objects.AddStream("", deflate: true, s => s.Write(Encoding.Latin1.GetBytes(content)));

        StringBuilder page = new();
        page.Append(CultureInfo.InvariantCulture, $"<< /Type /Page /Parent {tree} 0 R /Contents {stream} 0 R /Resources << {canvas.Resources()} >>\n");
        page.Append(CultureInfo.InvariantCulture, $"/MediaBox [{Box(new(0, 0, size.Media.WidthMm, size.Media.HeightMm), perMm)}]");
        if (size.Trim is { } trim)
            page.Append(CultureInfo.InvariantCulture, $" /TrimBox [{Box(trim, perMm)}]");
        if (size.Bleed is { } bleed)
            page.Append(CultureInfo.InvariantCulture, $" /BleedBox [{Box(bleed, perMm)}]");
        if (size.UserUnit > 1)
            page.Append(CultureInfo.InvariantCulture, $" /UserUnit {PdfText.Number(size.UserUnit)}");
        if (canvas.IsTransparent)
            page.Append(" /Group << /S /Transparency /CS /DeviceCMYK /I false /K false >>");
        pages.Add(objects.Add(page.Append(" >>").ToString()));
    }

    /// <summary>Ends the file.</summary>
    /// <exception cref="InvalidOperationException">It has no page, or was closed before.</exception>
    public void Close()
    {
        if (closed || pages.Count == 0)
            throw new InvalidOperationException("A PDF file is closed once, and with at least one page.");
        closed = true;
        foreach (PdfFont font in fonts)
            PdfFontObjects.Write(objects, font);
        objects.Write(tree, Invariant($"<< /Type /Pages /Kids [{string.Join(' ', pages.Select(p => Invariant($"{p} 0 R")))}] /Count {pages.Count} >>"));
        int metadata = objects.AddStream("/Type /Metadata /Subtype /XML", deflate: false, s => s.Write(Encoding.UTF8.GetBytes(Xmp())));
        objects.Write(root, Invariant($"<< /Type /Catalog /Pages {tree} 0 R /Metadata {metadata} 0 R{OptionalContent()} >>"));
        int info = objects.Add(Invariant(
            $"<< /Title {PdfText.Text(title)} /Producer {PdfText.Text("Laydown")} /CreationDate {PdfText.Date(made)} /ModDate {PdfText.Date(made)} /Trapped /False >>"));
        string id = Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(Invariant($"{title}|{made:O}|{pages.Count}")))[..16]);
        objects.Finish(root, info, id);
    }

    /// <summary>Object number of a layer.</summary>
    internal int LayerId(PdfLayer layer)
    {
        if (!layers.TryGetValue(layer, out int id))
        {
            string step = layer.StepGroup is null ? "" :
                Invariant($" /GTS_Metadata << /GTS_ProcStepsGroup {PdfText.Name(layer.StepGroup)}{(layer.StepType is null ? "" : " /GTS_ProcStepsType " + PdfText.Name(layer.StepType))} >>");
            id = objects.Add(Invariant($"<< /Type /OCG /Name {PdfText.Text(layer.Name)}{step} >>"));
            layers.Add(layer, id);
        }

        return id;
    }

    /// <summary>Object number of a separation's colour space.</summary>
    internal int SpotSpace(PdfSpot spot)
    {
        if (!spots.TryGetValue(spot, out int id))
        {
            id = objects.Add(Invariant(
                $"[/Separation {PdfText.Name(spot.Name)} /DeviceCMYK << /FunctionType 2 /Domain [0 1] /C0 [0 0 0 0] /C1 [{PdfText.Numbers(spot.Cyan, spot.Magenta, spot.Yellow, spot.Black)}] /N 1 >>]"));
            spots.Add(spot, id);
        }

        return id;
    }

    /// <summary>Object number of a DeviceN space over several separations and process inks, named in order.</summary>
    internal int DeviceNSpace(IReadOnlyList<PdfSpot> inks)
    {
        // The stand-in adds up the inks' process colours: each output is the sum of tint × share, kept within 1.
        StringBuilder code = new("{ ");
        for (int output = 0; output < 4; output++)
        {
            code.Append("0 ");
            for (int ink = 0; ink < inks.Count; ink++)
            {
                double share = output switch { 0 => inks[ink].Cyan, 1 => inks[ink].Magenta, 2 => inks[ink].Yellow, _ => inks[ink].Black };
                code.Append(CultureInfo.InvariantCulture, $"{inks.Count - ink + output} index {PdfText.Number(share)} mul add ");
            }

            code.Append("dup 1 gt { pop 1 } if ");
        }

        code.Append(CultureInfo.InvariantCulture, $"{inks.Count + 4} 4 roll ");
        code.Append(string.Concat(Enumerable.Repeat("pop ", inks.Count))).Append('}');
        string domain = string.Join(' ', Enumerable.Repeat("0 1", inks.Count));
        int function = objects.AddStream(Invariant($"/FunctionType 4 /Domain [{domain}] /Range [0 1 0 1 0 1 0 1]"), deflate: false, s => s.Write(Encoding.ASCII.GetBytes(code.ToString())));
        return objects.Add(Invariant($"[/DeviceN [{string.Join(' ', inks.Select(i => PdfText.Name(i.Name)))}] /DeviceCMYK {function} 0 R]"));
    }

    /// <summary>Writes an object that a page refers to.</summary>
    internal int AddObject(string body) => objects.Add(body);

    private static string ImageEntries(int width, int height, string space) =>
        Invariant($"/Type /XObject /Subtype /Image /Width {width} /Height {height} /BitsPerComponent 8 /ColorSpace {space}");

    private static void Demand(int found, int wanted)
    {
        if (found != wanted)
            throw new ArgumentException(Invariant($"Picture: found {found} bytes; wanted {wanted}."));
    }

    private static void Every(Stream stream, byte[] rgba, int first, int count)
    {
        byte[] part = new byte[rgba.Length / 4 * count];
        for (int i = 0, o = 0; i < rgba.Length; i += 4)
        {
            for (int c = 0; c < count; c++)
                part[o++] = rgba[i + first + c];
        }

        stream.Write(part);
    }

    private static string Box(RectMm box, double perMm) =>
        PdfText.Numbers(box.XMm * perMm, box.YMm * perMm, box.RightMm * perMm, box.TopMm * perMm);

    private string OptionalContent()
    {
        if (layers.Count == 0)
            return "";
        string all = string.Join(' ', layers.Values.Select(id => Invariant($"{id} 0 R")));
        string off = string.Join(' ', layers.Where(l => !l.Key.Visible).Select(l => Invariant($"{l.Value} 0 R")));
        return Invariant($" /OCProperties << /OCGs [{all}] /D << /Name {PdfText.Text("As drawn")} /BaseState /ON /Order [{all}] /OFF [{off}] >> >>");
    }

    private string Xmp()
    {
        string date = made.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);
        string safe = title.Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal);
        return Invariant($"""
            <?xpacket begin="{'\uFEFF'}" id="W5M0MpCehiHzreSzNTczkc9d"?>
            <x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
            <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
            <dc:format>application/pdf</dc:format><dc:title><rdf:Alt><rdf:li xml:lang="x-default">{safe}</rdf:li></rdf:Alt></dc:title>
            <xmp:CreateDate>{date}</xmp:CreateDate><xmp:ModifyDate>{date}</xmp:ModifyDate><pdf:Producer>Laydown</pdf:Producer><pdf:Trapped>False</pdf:Trapped>
            </rdf:Description></rdf:RDF></x:xmpmeta>
            <?xpacket end="r"?>
            """);
    }
}
