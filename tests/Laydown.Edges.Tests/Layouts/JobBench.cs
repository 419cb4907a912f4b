using System.Text;
using System.Text.Json.Nodes;
using Laydown.Cli;

namespace Laydown.Edges.Tests.Layouts;

/// <summary>A folder with a job in it, and the command line.</summary>
internal sealed class JobBench : IDisposable
{
    public string Folder { get; } = Directory.CreateTempSubdirectory("laydown-job-").FullName;

    public string Write(string name, string text)
    {
        string path = Path.Combine(Folder, name);
        File.WriteAllText(path, text);
        return path;
    }

    public async Task<(int Code, string Out, string Error)> RunAsync(CancellationToken cancellation, params string[] arguments)
    {
        StringWriter output = new(), error = new();
        int code = await CommandLine.RunAsync(arguments, output, error, cancellation);
        return (code, output.ToString(), error.ToString());
    }

    public JsonNode Json(string name) => JsonNode.Parse(File.ReadAllText(Path.Combine(Folder, name), Encoding.UTF8))!;

    /// <summary>A job of the given pieces and stocks.</summary>
    public static string Job(string pieces, string stocks, string rules = "\"toolMm\": 3, \"gapMm\": 2, \"process\": \"free\"") => $$"""
        { "schema": "laydown/layout-job", "version": 1, "name": "test", "pieces": [{{pieces}}], "stocks": [{{stocks}}],
          "rules": { {{rules}} } }
        """;

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
