namespace Laydown.Shop.Run;

/// <summary>Writes a file whole or not at all.</summary>
internal static class WholeFile
{
    /// <summary>Writes beside <paramref name="path"/>, flushes to the disk and renames; on any failure nothing new is left.</summary>
    public static async Task WriteAsync(string path, ReadOnlyMemory<byte> bytes, CancellationToken cancellation)
    {
        string folder = Path.GetDirectoryName(path) ?? throw new ArgumentException("Path: found no folder; wanted a full path.", nameof(path));
        Directory.CreateDirectory(folder);
        string beside = Path.Combine(folder, Invariant($".{Path.GetFileName(path)}.part"));
        try
        {
            await using (FileStream stream = new(beside, FileMode.Create, FileAccess.Write, FileShare.None))
            {
                await stream.WriteAsync(bytes, cancellation);
                stream.Flush(flushToDisk: true);
            }

            File.Move(beside, path, overwrite: true);
        }
        catch
        {
            File.Delete(beside);
            throw;
        }
    }
}
