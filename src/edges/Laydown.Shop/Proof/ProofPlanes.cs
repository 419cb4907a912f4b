using System.Collections.Concurrent;
using System.Security.Cryptography;

namespace Laydown.Shop.Proof;

/// <summary>Finds the ink planes of looks and tells which they are by their content.</summary>
/// <remarks>Looks lie whole or not at all in <c>looks/<i>item</i>/<i>look</i></c> and are never changed once there; a hash is computed once for each file, length and time of writing.</remarks>
/// <param name="folder">The shop's folder.</param>
public sealed class ProofPlanes(ShopFolder folder)
{
    private const int MostHashes = 256;
    private readonly ConcurrentDictionary<(string Path, long Bytes, DateTime Written), string> hashes = new();

    /// <summary>Full path of the planes of a look, or null where there is no such look or the names are none of ours.</summary>
    /// <param name="itemId">The item.</param>
    /// <param name="lookId">The look.</param>
    public string? Find(string itemId, string lookId)
    {
        if (!IsName(itemId) || !IsName(lookId))
            return null;
        string path = Path.Combine(folder.Root, "looks", itemId, lookId, "planes.raw");
        return File.Exists(path) ? path : null;
    }

    /// <summary>SHA-256 of the planes of a look, lower-case hex, or null where there is none.</summary>
    /// <param name="itemId">The item.</param>
    /// <param name="lookId">The look.</param>
    /// <param name="cancellation">Stops.</param>
    public async Task<string?> Sha256Async(string itemId, string lookId, CancellationToken cancellation)
    {
        if (Find(itemId, lookId) is not { } path)
            return null;
        FileInfo file = new(path);
        (string, long, DateTime) of = (path, file.Length, file.LastWriteTimeUtc);
        if (hashes.TryGetValue(of, out string? known))
            return known;
        await using FileStream stream = new(path, new FileStreamOptions { Options = FileOptions.SequentialScan | FileOptions.Asynchronous, BufferSize = 1 << 20 });
        string hash = Convert.ToHexStringLower(await SHA256.HashDataAsync(stream, cancellation));
        if (hashes.Count >= MostHashes)
            hashes.Clear();
        return hashes[of] = hash;
    }

    /// <summary>Whether a name can be that of a folder of ours: letters, digits, hyphens, underscores and dots, not starting with a dot.</summary>
    internal static bool IsName(string name) =>
        name.Length is > 0 and <= 100 && name[0] != '.' && name.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' or '.');
}
