using System.Runtime.InteropServices;
using System.Text.Json;
using Laydown.Colour.Fits;
using Laydown.Measures;

namespace Laydown.Shop.Colour;

/// <summary>A fitted model as a file: JSON with schema and version; the grid as base64 of little-endian 32-bit numbers, so that it comes back bit by bit.</summary>
public static class FitText
{
    private const string Schema = "laydown/fit";
    private const int Version = 1;
    private const int MostNumbers = 8_000_000;
    private const long MostBytes = 64 << 20;

    /// <summary>Bytes of a model's file.</summary>
    public static byte[] Write(string name, FittedPrint print)
    {
        FitGrid grid = print.Grid;
        return JsonSerializer.SerializeToUtf8Bytes(
            new FitForm(
                Schema, Version, name, grid.InkNames, print.Kind, grid.YuleNielsen, print.CrossValidated, grid.Curves, grid.Nodes,
                Convert.ToBase64String(MemoryMarshal.AsBytes<float>(grid.Roots))),
            ShopJson.Readable);
    }

    /// <summary>The model in a file, or why it cannot be taken.</summary>
    /// <param name="path">Full path.</param>
    public static Reading<PrintModel> Read(string path)
    {
        string file = Path.GetFileName(path);
        try
        {
            FileInfo info = new(path);
            if (!info.Exists || info.Length > MostBytes)
                return Refused(file, "file", info.Exists ? Invariant($"{info.Length} bytes") : "no such file", Invariant($"a model of at most {MostBytes} bytes"));
            FitForm? form = JsonSerializer.Deserialize<FitForm>(File.ReadAllBytes(path), ShopJson.Readable);
            if (form is not { Schema: Schema, Version: Version })
                return Refused(file, "/schema", Invariant($"{form?.Schema} {form?.Version}"), Invariant($"{Schema} {Version}"));
            return Model(file, form);
        }
        catch (Exception e) when (e is JsonException or FormatException or ArgumentException or IOException or UnauthorizedAccessException or OverflowException)
        {
            return Refused(file, e is JsonException json ? json.Path ?? "/" : "/", e.Message, "a model as written by laydown condition fit");
        }
    }

    private static Reading<PrintModel> Model(string file, FitForm form)
    {
        if (form.InkNames is null || form.Curves is null || form.Nodes is null || form.Roots is null || form.CrossValidated is null)
            return Refused(file, "/", "fields left out", "inkNames, curves, nodes, roots, crossValidated");
        if (form.Curves.Any(c => c is null) || form.Nodes.Any(n => n is null))
            return Refused(file, "/curves", "null", "numbers");
        byte[] bytes = Convert.FromBase64String(form.Roots);
        if (bytes.Length % 4 != 0 || bytes.Length / 4 > MostNumbers)
            return Refused(file, "/roots", Invariant($"{bytes.Length} bytes"), Invariant($"4 bytes for each of at most {MostNumbers} numbers"));
        FitGrid grid = new(form.InkNames, form.YuleNielsen, form.Curves, form.Nodes, MemoryMarshal.Cast<byte, float>(bytes).ToArray());
        return Reading.Of(new PrintModel(form.Name ?? file, form.Kind, form.CrossValidated, new GridModel(grid)));
    }

    private static Reading<PrintModel> Refused(string file, string field, string found, string wanted) =>
        Reading.Refused<PrintModel>(new InputFault(file, null, field, found, wanted));

    private sealed record FitForm(
        string Schema,
        int Version,
        string Name,
        IReadOnlyList<string> InkNames,
        FitKind Kind,
        double YuleNielsen,
        ResidualSummary CrossValidated,
        IReadOnlyList<IReadOnlyList<double>> Curves,
        IReadOnlyList<IReadOnlyList<double>> Nodes,
        string Roots);
}
