using System.Security.Cryptography;

namespace Laydown.Shop.Proof;

/// <summary>The key that signs proof links: random, made on first use, in a file that only the shop's own user may read.</summary>
/// <param name="folder">The shop's folder.</param>
public sealed class ProofKey(ShopFolder folder)
{
    private readonly Lock gate = new();
    private byte[]? kept;

    /// <summary>Full path of the file.</summary>
    public string FilePath => Path.Combine(folder.Root, "store", "proof.key");

    /// <summary>The key; made and written whole, with mode 0600, when there is none.</summary>
    /// <exception cref="InvalidDataException">The file has another length.</exception>
    /// <exception cref="IOException">The file cannot be read or written.</exception>
    public byte[] Read()
    {
        lock (gate)
        {
            if (kept is not null)
                return kept;
            if (!File.Exists(FilePath))
                Make();
            byte[] key = File.ReadAllBytes(FilePath);
            if (key.Length != ProofToken.KeyBytes)
            {
                throw new InvalidDataException(Invariant(
                    $"store/proof.key: found {key.Length} bytes; wanted {ProofToken.KeyBytes}. Remove the file to have a new key made; links sent before then show nothing."));
            }

            // Copied or restored files may have come with looser rights.
            if (!OperatingSystem.IsWindows())
                File.SetUnixFileMode(FilePath, UnixFileMode.UserRead | UnixFileMode.UserWrite);
            return kept = key;
        }
    }

    private void Make()
    {
        Directory.CreateDirectory(Path.GetDirectoryName(FilePath)!);
        string beside = Invariant($"{FilePath}.{Guid.NewGuid():N}.part");
        FileStreamOptions alone = new() { Mode = FileMode.CreateNew, Access = FileAccess.Write, Share = FileShare.None };
        if (!OperatingSystem.IsWindows())
            alone.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        try
        {
            using (FileStream file = new(beside, alone))
            {
                file.Write(RandomNumberGenerator.GetBytes(ProofToken.KeyBytes));
                file.Flush(flushToDisk: true);
            }

            File.Move(beside, FilePath, overwrite: false);
        }
        catch (IOException) when (File.Exists(FilePath))
        {
            // Another process of the same shop was first: its key counts.
        }
        finally
        {
            File.Delete(beside);
        }
    }
}
