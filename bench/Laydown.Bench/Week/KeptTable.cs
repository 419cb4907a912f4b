using Laydown.Formats.Json;

namespace Laydown.Bench.Week;

/// <summary>Keeps the last result and writes its table: figures are never typed.</summary>
internal static class KeptTable
{
    /// <summary>Writes both.</summary>
    /// <param name="result">The result.</param>
    /// <param name="file">Where it is kept, as JSON.</param>
    /// <param name="table">The table, as Markdown.</param>
    /// <param name="target">Where that is written.</param>
    /// <param name="cancellation">Ends the writing.</param>
    public static async Task WriteAsync<T>(T result, string file, string table, string target, CancellationToken cancellation)
        where T : notnull
    {
        using MemoryStream stream = new();
        LaydownJson.WriteResult(stream, "laydown/bench", 1, result);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        Directory.CreateDirectory(Path.GetDirectoryName(target)!);
        await File.WriteAllBytesAsync(file, stream.ToArray(), cancellation);
        await File.WriteAllTextAsync(target, table, cancellation);
    }
}
