using Microsoft.Win32.SafeHandles;

namespace Laydown.Output.PressFiles;

/// <summary>A run folder in the making: written in scratch, then moved in place as a whole, or gone without a trace.</summary>
/// <remarks>
/// Scratch holds, for each maker, a folder and beside it a lock file that the maker keeps open. A maker that was killed holds no lock: its
/// remains can be told from the work of one that lives, in this process or another.
/// </remarks>
internal sealed class RunFolder : IDisposable
{
    private const string LockEnding = ".lock";

    private readonly string root;
    private readonly string lockPath;
    private readonly FileStream held;

    /// <summary>Starts a run folder.</summary>
    /// <param name="scratchFolder">Scratch, on the file system of the runs.</param>
    /// <param name="runId">The run; a plain name.</param>
    /// <exception cref="ArgumentException">The id is no plain file name.</exception>
    public RunFolder(string scratchFolder, string runId)
    {
        if (runId.Length == 0 || runId[0] == '.' || Path.GetFileName(runId) != runId)
            throw new ArgumentException(Invariant($"Run id: found \"{runId}\"; wanted a plain name."), nameof(runId));
        Directory.CreateDirectory(scratchFolder);
        root = Path.Combine(scratchFolder, Invariant($"{runId}.{Guid.NewGuid():N}"));
        lockPath = root + LockEnding;
        held = new(lockPath, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None);
        FilesPath = Path.Combine(root, "files");
        WorkPath = Path.Combine(root, "work");
    }

    /// <summary>What becomes the run folder.</summary>
    public string FilesPath { get; }

    /// <summary>For raw planes; never part of the run.</summary>
    public string WorkPath { get; }

    /// <summary>Makes both folders.</summary>
    public void Create()
    {
        Directory.CreateDirectory(FilesPath);
        Directory.CreateDirectory(WorkPath);
    }

    /// <summary>Removes what killed makers left behind; the work of living ones is let alone.</summary>
    public static void Sweep(string scratchFolder)
    {
        if (!Directory.Exists(scratchFolder))
            return;
        foreach (string path in Directory.GetFiles(scratchFolder, "*" + LockEnding))
        {
            // Whoever can take the lock knows that its maker is gone.
            if (TryTake(path) is not { } taken)
                continue;
            using (taken)
                Remove(path[..^LockEnding.Length]);
            File.Delete(path);
        }
    }

    /// <summary>Flushes every file and puts the folder in place, in one step; an earlier one goes away afterwards.</summary>
    public void Publish(string runsFolder, string runId)
    {
        foreach (string file in Directory.GetFiles(FilesPath))
        {
            using SafeFileHandle handle = File.OpenHandle(file, FileMode.Open, FileAccess.ReadWrite);
            RandomAccess.FlushToDisk(handle);
        }

        NativeFolder.Flush(FilesPath);
        Directory.CreateDirectory(runsFolder);
        string place = Path.Combine(runsFolder, runId);
        if (Directory.Exists(place))
            NativeFolder.Swap(FilesPath, place);
        else
            Directory.Move(FilesPath, place);
        NativeFolder.Flush(runsFolder);
    }

    /// <summary>Removes all that is left in scratch.</summary>
    public void Dispose()
    {
        Remove(root);
        held.Dispose();
        File.Delete(lockPath);
    }

    private static FileStream? TryTake(string path)
    {
        try
        {
            return new(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static void Remove(string folder)
    {
        if (Directory.Exists(folder))
            Directory.Delete(folder, recursive: true);
    }
}
