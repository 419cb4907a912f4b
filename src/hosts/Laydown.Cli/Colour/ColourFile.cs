using System.Text;

namespace Laydown.Cli.Colour;

/// <summary>Writes a result of a command: whole or not at all.</summary>
internal static class ColourFile
{
    /// <summary>Writes beside and renames; on any failure nothing new is left.</summary>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public static async Task WriteAsync(string path, ReadOnlyMemory<byte> bytes, CancellationToken cancellation)
    {
        string full = Path.GetFullPath(path);
        string beside = Path.Combine(Path.GetDirectoryName(full)!, Invariant($".{Path.GetFileName(full)}.{Environment.ProcessId}.part"));
        try
        {
            await File.WriteAllBytesAsync(beside, bytes, cancellation);
            File.Move(beside, full, overwrite: true);
        }
        finally
        {
            File.Delete(beside);
        }
    }

    /// <summary>Rows under a line of names.</summary>
    public static byte[] Csv(IReadOnlyList<string> names, IEnumerable<IReadOnlyList<string>> rows)
    {
        StringBuilder text = new();
        text.AppendJoin(',', names.Select(Cell)).Append('\n');
        foreach (IReadOnlyList<string> row in rows)
            text.AppendJoin(',', row.Select(Cell)).Append('\n');
        return new UTF8Encoding(false).GetBytes(text.ToString());
    }

    private static string Cell(string text) =>
        text.AsSpan().IndexOfAny(",\"\n") < 0 ? text : '"' + text.Replace("\"", "\"\"", StringComparison.Ordinal) + '"';
}
