using System.Security.Cryptography;
using System.Text.Json;

namespace Laydown.Shop.Layers;

/// <summary>The folder of a look in the making: written beside, then put in place in one step, or gone without a trace.</summary>
/// <remarks>
/// While it is made its name starts with a dot and ends in <c>.part</c>, and its maker keeps a lock file beside it open: what a killed maker left can
/// be told from the work of one that lives. A new draft sweeps such remains beside it.
/// </remarks>
public sealed class LookDraft : IDisposable
{
    private readonly string parent;
    private readonly string lockPath;
    private readonly FileStream held;

    /// <summary>Starts a draft.</summary>
    /// <param name="parentFolder">Folder in which the look's folder will stand; made when missing.</param>
    /// <exception cref="IOException">The folder cannot be written.</exception>
    public LookDraft(string parentFolder)
    {
        parent = Path.GetFullPath(parentFolder);
        Directory.CreateDirectory(parent);
        LookFolders.Sweep(parent);
        FolderPath = Path.Combine(parent, Invariant($".{Guid.NewGuid():N}{LookFolders.PartEnding}"));
        lockPath = FolderPath + LookFolders.LockEnding;
        held = new(lockPath, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None);
        Directory.CreateDirectory(FolderPath);
    }

    /// <summary>Full path of the draft's folder.</summary>
    public string FolderPath { get; }

    /// <summary>Full path of a file in it.</summary>
    public string File(string name) => Path.Combine(FolderPath, Path.GetFileName(name));

    /// <summary>Writes a small file.</summary>
    public Task WriteAsync(string name, ReadOnlyMemory<byte> bytes, CancellationToken cancellation) =>
        System.IO.File.WriteAllBytesAsync(File(name), bytes, cancellation);

    /// <summary>Lists what was written, with lengths and hashes, in the order of the names.</summary>
    public async Task<IReadOnlyList<LookFile>> FilesAsync(CancellationToken cancellation)
    {
        List<LookFile> files = [];
        foreach (string path in Directory.GetFiles(FolderPath).Order(StringComparer.Ordinal))
        {
            await using FileStream stream = System.IO.File.OpenRead(path);
            files.Add(new(Path.GetFileName(path), stream.Length, Convert.ToHexStringLower(await SHA256.HashDataAsync(stream, cancellation))));
        }

        return files;
    }

    /// <summary>Puts the look in place under the next free id of its folder.</summary>
    /// <param name="record">The record; its id is set here.</param>
    /// <param name="cancellation">Looked at before the last step; from there on it is done.</param>
    /// <returns>The record as it stands.</returns>
    public async Task<LookRecord> PublishAsync(LookRecord record, CancellationToken cancellation)
    {
        // Another maker may take the same number in between: then the next is tried.
        for (int number = NextNumber(); ; number++)
        {
            string id = Invariant($"L-{number}");
            if (Directory.Exists(Path.Combine(parent, id)))
                continue;
            LookRecord named = record with { LookId = id };
            if (await TryPublishAsync(named, id, cancellation))
                return named;
        }
    }

    /// <summary>Puts the look in place under a name of its own, such as for a folder that was asked for.</summary>
    /// <param name="record">The record, its id as it shall stand.</param>
    /// <param name="name">Plain name of the folder.</param>
    /// <param name="cancellation">Looked at before the last step.</param>
    /// <exception cref="IOException">A folder of that name stands there.</exception>
    public async Task<LookRecord> PublishAsAsync(LookRecord record, string name, CancellationToken cancellation) =>
        await TryPublishAsync(record, name, cancellation)
            ? record
            : throw new IOException(Invariant($"{name} stands there already; wanted a new name."));

    /// <inheritdoc/>
    public void Dispose()
    {
        if (Directory.Exists(FolderPath))
            Directory.Delete(FolderPath, recursive: true);
        held.Dispose();
        System.IO.File.Delete(lockPath);
    }

    private int NextNumber() => Directory.GetDirectories(parent, "L-*")
        .Select(p => LookFolders.NumberOf(Path.GetFileName(p)) ?? 0).DefaultIfEmpty(0).Max() + 1;

    private async Task<bool> TryPublishAsync(LookRecord record, string name, CancellationToken cancellation)
    {
        await WriteAsync(LookFolders.RecordFile, JsonSerializer.SerializeToUtf8Bytes(record, ShopJson.Readable), cancellation);
        foreach (string path in Directory.GetFiles(FolderPath))
        {
            using var handle = System.IO.File.OpenHandle(path, FileMode.Open, FileAccess.ReadWrite);
            RandomAccess.FlushToDisk(handle);
        }

        cancellation.ThrowIfCancellationRequested();
        string place = Path.Combine(parent, name);
        if (Directory.Exists(place))
            return false;
        try
        {
            Directory.Move(FolderPath, place);
            return true;
        }
        catch (IOException) when (Directory.Exists(place))
        {
            return false;
        }
    }
}
