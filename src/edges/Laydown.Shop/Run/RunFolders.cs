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

    /// <summary>Takes the folder of a run out of sight under a name that counts as scratch; null where there is none.</summary>
    public static string? SetAside(string folder, string runId)
    {
        string there = Path.Combine(folder, Path.GetFileName(runId));
        if (!Directory.Exists(there))
            return null;
        string aside = Path.Combine(folder, Invariant($".{Path.GetFileName(runId)}.{Guid.NewGuid():N}.old"));
        Directory.Move(there, aside);
        return aside;
    }

    /// <summary>Undoes it.</summary>
    public static void BringBack(string folder, string runId, string? aside)
    {
        if (aside is not null)
            Directory.Move(aside, Path.Combine(folder, Path.GetFileName(runId)));
    }

    /// <summary>Removes what was set aside; what cannot be removed now is swept as scratch at the next start.</summary>
    public static void Remove(string? aside)
    {
        try
        {
            if (aside is not null)
                Directory.Delete(aside, recursive: true);
        }
        catch (IOException)
        {
            // A file of it is still open somewhere.
        }
    }
}
