using System.Globalization;
using System.Text;
using System.Text.Json;
using Laydown.Formats.Json;

namespace Laydown.Bench.Layout;

/// <summary>Keeps each family's last result in <c>bench/results/layout</c> and writes the table of all of them: figures are never typed.</summary>
internal static class LayoutTable
{
    private const string Schema = "laydown/bench";

    /// <summary>Keeps a result, a file a family and variant.</summary>
    public static async Task KeepAsync(LayoutResult result, string folder, CancellationToken cancellation)
    {
        Directory.CreateDirectory(folder);
        foreach (LayoutGroup group in result.Groups)
        {
            using MemoryStream stream = new();
            LaydownJson.WriteResult(stream, Schema, 1, group);
            string name = string.Join('-', (group.Family + "-" + group.Variant).Split([' ', ',', '.', '/'], StringSplitOptions.RemoveEmptyEntries));
            await File.WriteAllBytesAsync(Path.Combine(folder, name + ".json"), stream.ToArray(), cancellation);
        }
    }

    /// <summary>Writes the table of all kept results.</summary>
    public static async Task WriteAsync(string folder, string target, CancellationToken cancellation)
    {
        StringBuilder text = new("# Layout: published instances\n\nWritten by `./bench/run layout --keep`; do not edit. Every layout was judged by the independent checker (`tests/Laydown.Instances`); a refused one counts as failed.\n\n");
        text.Append("| family | variant | wanted | found | failed | instances | time each | day | best values |\n| --- | --- | --- | --- | --- | --- | --- | --- | --- |\n");
        List<JsonElement> groups = [];
        foreach (string file in Directory.EnumerateFiles(folder, "*.json").Order(StringComparer.Ordinal))
        {
            using var document = JsonDocument.Parse(await File.ReadAllBytesAsync(file, cancellation));
            groups.Add(document.RootElement.Clone());
        }

        foreach (JsonElement group in groups)
            text.Append(Line(group));
        foreach (JsonElement group in groups)
            Rows(group, text);
        Directory.CreateDirectory(Path.GetDirectoryName(target)!);
        await File.WriteAllTextAsync(target, text.ToString(), cancellation);
    }

    private static string Line(JsonElement g)
    {
        int sample = g.GetProperty("sample").GetInt32();
        string every = sample > 1 ? Invariant($", every {sample}th") : "";
        string time = Invariant($"{g.GetProperty("budgetSeconds").GetDouble():0.##} s {(g.GetProperty("byProcessor").GetBoolean() ? "of each processor" : "wall")} x {g.GetProperty("workers").GetInt32()}");
        return Invariant($"| {Text(g, "family")} | {Text(g, "variant")} | {Text(g, "wanted")} | {Text(g, "words")} | {g.GetProperty("failed").GetInt32()} | ")
            + Invariant($"{g.GetProperty("rows").GetArrayLength()}{every} | {time} | {Text(g, "date")} | {Text(g, "bestFrom")} |\n");
    }

    private static void Rows(JsonElement g, StringBuilder text)
    {
        text.Append(CultureInfo.InvariantCulture, $"\n## {Text(g, "family")}, {Text(g, "variant")}\n\n| instance | ours | best published | gap % | wall s | processor s | fault |\n| --- | --- | --- | --- | --- | --- | --- |\n");
        foreach (JsonElement r in g.GetProperty("rows").EnumerateArray())
            text.Append(CultureInfo.InvariantCulture, $"| {Text(r, "instance")} | {Number(r, "ours", "0.####")} {Text(r, "unit")} | {Number(r, "best", "0.####")} | {Number(r, "gapPercent", "0.00")} | {Number(r, "seconds", "0.00")} | {Number(r, "cpuSeconds", "0.00")} | {Text(r, "fault")} |\n");
    }

    private static string Text(JsonElement element, string name) =>
        element.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.String ? value.GetString()! : "";

    private static string Number(JsonElement element, string name, string format) =>
        element.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.Number ? value.GetDouble().ToString(format, CultureInfo.InvariantCulture) : "-";
}
