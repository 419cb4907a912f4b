using Laydown.Artwork.Pages;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Tokenization.Scanner;
using UglyToad.PdfPig.Tokens;

namespace Laydown.Formats.Pdf;

/// <summary>Follows the drawing operations of a page, forms and tiling patterns included, and notes what checks need. Nothing is rendered.</summary>
/// <param name="objects">The open file.</param>
/// <param name="layers">Its optional content.</param>
/// <param name="notes">What is gathered.</param>
/// <param name="mostOperations">Most operations followed.</param>
/// <param name="cancellation">Stops the walk.</param>
internal sealed class PageWalk(PdfObjects objects, LayerReader layers, PageNotes notes, long mostOperations, CancellationToken cancellation)
{
    private const int DeepestForm = 16;
    private const int MostSaved = 512;
    private readonly ColourSpaceReader colours = new(objects);
    private readonly PathBuilder path = new();
    private readonly List<Layer?> open = [];
    private readonly HashSet<StreamToken> patternsSeen = [];
    private Affine page;
    private long operations;

    /// <summary>The processing step of the innermost layer that has one.</summary>
    private string? Step => open.FindLast(l => l?.Step is not null)?.Step;

    /// <summary>Walks over the content of a page.</summary>
    /// <exception cref="TooMuchWorkException">More operations than allowed.</exception>
    public void Page(ReadOnlyMemory<byte> content, DictionaryToken? resources, Affine toMm)
    {
        page = toMm;
        Content(content, resources, WalkState.Start(toMm), 0);
    }

    private void Content(ReadOnlyMemory<byte> content, DictionaryToken? resources, WalkState start, int depth)
    {
        int layersBefore = open.Count;
        var saved = new Stack<WalkState>();
        var state = start;
        var operands = new List<IToken>();
        var scanner = new CoreTokenScanner(new MemoryInputBytes(content), false, new StackDepthGuard(256), useLenientParsing: true, isStream: true);
        while (scanner.MoveNext())
        {
            switch (scanner.CurrentToken)
            {
                case InlineImageDataToken:
                    InlineImage(operands, resources, state);
                    operands.Clear();
                    break;
                case OperatorToken operation:
                    Count();
                    state = Run(operation.Data, operands, resources, state, saved, depth);
                    operands.Clear();
                    break;
                case CommentToken:
                    break;
                case var operand when operands.Count < 4096:
                    operands.Add(operand);
                    break;
            }
        }

        open.RemoveRange(layersBefore, open.Count - layersBefore);
    }

    private void Count()
    {
        if (++operations > mostOperations || path.Count > mostOperations)
            throw new TooMuchWorkException("more drawing operations than allowed");
        if (operations % 1024 == 0)
            cancellation.ThrowIfCancellationRequested();
    }

    private WalkState Run(string operation, List<IToken> o, DictionaryToken? resources, WalkState state, Stack<WalkState> saved, int depth)
    {
        switch (operation)
        {
            case "q" when saved.Count < MostSaved:
                saved.Push(state);
                return state;
            case "Q":
                return saved.TryPop(out var before) ? before : state;
            case "cm" when Numbers(o, 6) is { } m:
                return state with { ToMm = new Affine(m[0], m[1], m[2], m[3], m[4], m[5]).Then(state.ToMm) };
            case "w" when Numbers(o, 1) is { } w:
                return state with { LineWidth = Math.Abs(w[0]) };
            case "gs":
                return GraphicsState(Entry(resources, "ExtGState", o), state);
            case "Tr" when Numbers(o, 1) is { } mode:
                return state with { TextMode = (int)mode[0] };
            case "CS" or "SC" or "SCN" or "G" or "RG" or "K":
                return state with { Stroke = Colour(operation, o, resources, state.Stroke) };
            case "cs" or "sc" or "scn" or "g" or "rg" or "k":
                return state with { Fill = Colour(operation.ToUpperInvariant(), o, resources, state.Fill) };
            case "m" or "l" or "c" or "v" or "y" or "h" or "re":
                Draw(operation, o, state.ToMm);
                return state;
            default:
                Paint(operation, o, resources, state, depth);
                return state;
        }
    }

    private void Draw(string operation, List<IToken> o, Affine map)
    {
        switch (operation)
        {
            case "m" when Numbers(o, 2) is { } n:
                path.MoveTo(map.Map(n[0], n[1]));
                break;
            case "l" when Numbers(o, 2) is { } n:
                path.LineTo(map.Map(n[0], n[1]));
                break;
            case "c" when Numbers(o, 6) is { } n:
                path.CurveTo(map.Map(n[0], n[1]), map.Map(n[2], n[3]), map.Map(n[4], n[5]));
                break;
            case "v" when Numbers(o, 4) is { } n:
                path.CurveFromHere(map.Map(n[0], n[1]), map.Map(n[2], n[3]));
                break;
            case "y" when Numbers(o, 4) is { } n:
                path.CurveTo(map.Map(n[0], n[1]), map.Map(n[2], n[3]), map.Map(n[2], n[3]));
                break;
            case "h":
                path.Close();
                break;
            case "re" when Numbers(o, 4) is { } n:
                path.MoveTo(map.Map(n[0], n[1]));
                path.LineTo(map.Map(n[0] + n[2], n[1]));
                path.LineTo(map.Map(n[0] + n[2], n[1] + n[3]));
                path.LineTo(map.Map(n[0], n[1] + n[3]));
                path.Close();
                break;
        }
    }

    private void Paint(string operation, List<IToken> o, DictionaryToken? resources, WalkState state, int depth)
    {
        switch (operation)
        {
            case "S" or "s" or "B" or "B*" or "b" or "b*" or "f" or "F" or "f*" or "n":
                PaintPath(operation, resources, state, depth);
                break;
            case "Tj" or "TJ" or "'" or "\"":
                PaintText(resources, state, depth);
                break;
            case "sh":
                Shading(Entry(resources, "Shading", o), resources, state.FillOverprint);
                break;
            case "Do":
                External(Entry(resources, "XObject", o), resources, state, depth);
                break;
            case "BMC":
                open.Add(null);
                break;
            case "BDC":
                OpenLayer(o, resources);
                break;
            case "EMC" when open.Count > 0:
                open.RemoveAt(open.Count - 1);
                break;
        }
    }

    private void PaintPath(string operation, DictionaryToken? resources, WalkState state, int depth)
    {
        if (operation is "s" or "b" or "b*")
            path.Close();
        bool drawn = path.Parts.Count > 0;
        if (drawn && operation is "f" or "F" or "f*" or "B" or "B*" or "b" or "b*")
            Use(state.Fill, state.FillOverprint, resources, depth);
        if (drawn && operation is "S" or "s" or "B" or "B*" or "b" or "b*")
            Stroke(resources, state, depth);
        path.Clear();
    }

    private void Stroke(DictionaryToken? resources, WalkState state, int depth)
    {
        if (path.Parts.Count == 0)
            return;

        Use(state.Stroke, state.StrokeOverprint, resources, depth);
        string? step = Step;
        string? cut = state.Stroke.Space.Spots.FirstOrDefault(s => SeparationRoles.Of(s, step) == SeparationRole.Cut);
        if (cut is not null)
            path.Parts.ForEach(part => notes.Cut(part, SeparationRoles.CutStep(cut, step)));

        // Lines that are cut, drilled or only shown are not printed: their width says nothing.
        bool printed = state.Stroke.Space.Spots.Count == 0
            || state.Stroke.Space.Spots.Any(s => SeparationRoles.Of(s, step) is not (SeparationRole.Cut or SeparationRole.Drill or SeparationRole.Legend));
        if (printed)
            notes.Lines.Add(state.LineWidth * state.ToMm.LeastStretch, path.Bounds);
    }

    private void PaintText(DictionaryToken? resources, WalkState state, int depth)
    {
        if (state.TextMode is 0 or 2 or 4 or 6)
            Use(state.Fill, state.FillOverprint, resources, depth);
        if (state.TextMode is 1 or 2 or 5 or 6)
            Use(state.Stroke, state.StrokeOverprint, resources, depth);
    }

    private void Use(PaintColour colour, bool overprint, DictionaryToken? resources, int depth)
    {
        if (colour.Pattern is null)
        {
            notes.Painted(colour.Space, Step, overprint);
            return;
        }

        var pattern = objects.Dictionary(resources, "Pattern") is { } patterns && patterns.Data.TryGetValue(colour.Pattern, out var raw) ? objects.Resolve(raw) : null;
        if (pattern is DictionaryToken shading)
            Shading(shading.Data.GetValueOrDefault("Shading"), resources, overprint);
        else if (pattern is StreamToken tile && depth < DeepestForm && patternsSeen.Add(tile))
            Tile(tile, depth, colour);
    }

    private void Tile(StreamToken tile, int depth, PaintColour colour)
    {
        // A tile is drawn in the page's own space, whatever was scaled since. Its path is kept apart from the one being painted.
        if (colour.Space.Label != "Pattern")
            notes.Painted(colour.Space, Step, false);
        var walk = new PageWalk(objects, layers, notes, mostOperations - operations, cancellation) { page = page };
        var start = WalkState.Start(Matrix(tile.StreamDictionary).Then(page));
        walk.Content(objects.Decode(tile), objects.Dictionary(tile.StreamDictionary, "Resources"), start, depth + 1);
        operations += walk.operations;
    }

    private void Shading(IToken? token, DictionaryToken? resources, bool overprint)
    {
        if (objects.AsDictionary(token) is { } shading && shading.Data.TryGetValue("ColorSpace", out var space))
            notes.Painted(colours.Read(space, resources), Step, overprint);
    }

    private void External(IToken? token, DictionaryToken? resources, WalkState state, int depth)
    {
        if (objects.Resolve(token) is not StreamToken stream)
            return;

        var layer = stream.StreamDictionary.Data.TryGetValue("OC", out var oc) ? layers.Read(oc) : null;
        if (layer is not null)
            notes.Uses(layer);
        open.Add(layer);
        if (objects.Text(stream.StreamDictionary, "Subtype") == "Image")
            Image(stream.StreamDictionary, resources, state);
        else if (objects.Text(stream.StreamDictionary, "Subtype") == "Form" && depth < DeepestForm)
            Content(objects.Decode(stream), objects.Dictionary(stream.StreamDictionary, "Resources") ?? resources, Inside(stream, state), depth + 1);
        open.RemoveAt(open.Count - 1);
    }

    private WalkState Inside(StreamToken form, WalkState state) => state with { ToMm = Matrix(form.StreamDictionary).Then(state.ToMm) };

    private Affine Matrix(DictionaryToken dictionary) =>
        objects.Numbers(dictionary.Data.GetValueOrDefault("Matrix"), 6) is { } m ? new Affine(m[0], m[1], m[2], m[3], m[4], m[5]) : Affine.Identity;

    private void Image(DictionaryToken image, DictionaryToken? resources, WalkState state)
    {
        double? Either(string full, string brief) => objects.Number(image, full) ?? objects.Number(image, brief);
        int width = (int)Math.Clamp(Either("Width", "W") ?? 0, 0, 1e6);
        int height = (int)Math.Clamp(Either("Height", "H") ?? 0, 0, 1e6);
        if (width == 0 || height == 0)
            return;

        bool mask = objects.IsTrue(image, "ImageMask") || objects.IsTrue(image, "IM");
        var token = image.Data.GetValueOrDefault("ColorSpace") ?? image.Data.GetValueOrDefault("CS");
        var space = mask ? state.Fill.Space : token is null ? new ColourSpace("JPXDecode", []) : colours.Read(token, resources);
        notes.Painted(space, Step, state.FillOverprint);
        notes.Transparency |= image.Data.ContainsKey("SMask") || objects.Number(image, "SMaskInData") > 0;

        // The lower of both directions, along the picture's own rows and columns, so that a turned picture is judged right.
        var (acrossMm, downMm) = state.ToMm.ColumnLengths;
        double ppi = Math.Min(width * 25.4 / Math.Max(acrossMm, 1e-9), height * 25.4 / Math.Max(downMm, 1e-9));
        int bits = mask ? 1 : (int)(Either("BitsPerComponent", "BPC") ?? 8);
        notes.Image(new PlacedImage(width, height, state.ToMm.MapBox(0, 0, 1, 1), ppi, space.Label, bits, DeclaredPpi: null));
    }

    private void InlineImage(List<IToken> operands, DictionaryToken? resources, WalkState state)
    {
        Count();
        var entries = new Dictionary<NameToken, IToken>();
        for (int at = 0; at + 1 < operands.Count; at += 2)
        {
            if (operands[at] is NameToken key)
                entries[key] = operands[at + 1];
        }

        Image(new DictionaryToken(entries), resources, state);
    }

    private void OpenLayer(List<IToken> o, DictionaryToken? resources)
    {
        var layer = o.Count == 2 && o[0] is NameToken { Data: "OC" } ? layers.Read(Entry(resources, "Properties", [o[1]])) : null;
        open.Add(layer);
        if (layer is not null)
            notes.Uses(layer);
    }

    private WalkState GraphicsState(IToken? token, WalkState state)
    {
        if (objects.AsDictionary(token) is not { } given)
            return state;

        // OP alone sets both; op sets fills apart.
        bool? stroke = objects.Get<BooleanToken>(given, "OP")?.Data;
        bool? fill = objects.Get<BooleanToken>(given, "op")?.Data ?? stroke;
        notes.Overprint |= stroke == true || fill == true;
        string? blend = objects.Get<ArrayToken>(given, "BM") is { Data.Count: > 0 } wishes ? (objects.Resolve(wishes.Data[0]) as NameToken)?.Data : objects.Text(given, "BM");
        notes.Transparency |= objects.Number(given, "CA") < 1 || objects.Number(given, "ca") < 1
            || blend is not (null or "Normal" or "Compatible") || objects.Dictionary(given, "SMask") is not null;
        return state with
        {
            StrokeOverprint = stroke ?? state.StrokeOverprint,
            FillOverprint = fill ?? state.FillOverprint,
            LineWidth = objects.Number(given, "LW") ?? state.LineWidth,
        };
    }

    private PaintColour Colour(string operation, List<IToken> o, DictionaryToken? resources, PaintColour now) => operation switch
    {
        "G" => new(colours.Read(NameToken.Create("DeviceGray"), resources), null),
        "RG" => new(colours.Read(NameToken.Create("DeviceRGB"), resources), null),
        "K" => new(colours.Read(NameToken.Create("DeviceCMYK"), resources), null),
        "CS" when o.Count == 1 => new(colours.Read(o[0], resources), null),
        "SCN" when o.Count > 0 && o[^1] is NameToken pattern => now with { Pattern = pattern.Data },
        _ => now with { Pattern = null },
    };

    private IToken? Entry(DictionaryToken? resources, string category, List<IToken> o) =>
        o.Count == 1 && o[0] is NameToken name && objects.Dictionary(resources, category) is { } entries ? entries.Data.GetValueOrDefault(name.Data) : null;

    private static double[]? Numbers(List<IToken> o, int count)
    {
        if (o.Count != count)
            return null;

        double[] values = new double[count];
        for (int at = 0; at < count; at++)
        {
            if (o[at] is not NumericToken { Double: var value } || !double.IsFinite(value) || Math.Abs(value) > 1e12)
                return null;
            values[at] = value;
        }

        return values;
    }
}
