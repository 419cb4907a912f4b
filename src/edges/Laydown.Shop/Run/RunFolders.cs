using System.Security.Cryptography;

namespace Laydown.Shop.Run;

/// <summary>Looks after the folder of runs: whether one is whole, and what a kill left lying.</summary>
internal static class RunFolders
{
    /// <summary>Whether every file of the manifest is there with its length and SHA-256.</summary>
    public static async Task<bool> IsWholeAsync(string runFolder, IReadOnlyList<ManifestEntry> files, CancellationToken cancellation)
    {
        if (files.Count == 0)
            return false;
        foreach (ManifestEntry entry in files)
        {
            cancellation.ThrowIfCancellationRequested();
            FileInfo file = new(Path.Combine(runFolder, Path.GetFileName(entry.Name)));
            if (!file.Exists || file.Length != entry.Bytes)
                return false;
            await using FileStream stream = file.OpenRead();
            string sha256 = Convert.ToHexStringLower(await SHA256.HashDataAsync(stream, cancellation));
            if (!string.Equals(sha256, entry.Sha256, StringComparison.OrdinalIgnoreCase))
                return false;
        }

        return true;
    }

    /// <summary>Removes what is no finished run folder: names that start with a dot are scratch of a maker that was killed.</summary>
    public static void SweepScratch(string folder)
    {
        if (!Directory.Exists(folder))
            return;
        foreach (string scratch in Directory.EnumerateDirectories(folder, ".*").ToList())
            Directory.Delete(scratch, recursive: true);
        foreach (string scratch in Directory.EnumerateFiles(folder, ".*").ToList())
            File.Delete(scratch);
    }
}
