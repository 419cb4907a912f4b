using System.Text.Json;
using System.Text.Json.Nodes;
using Laydown.Measures;
using Laydown.Shop.Run;
using Microsoft.Win32.SafeHandles;

namespace Laydown.Output.PressFiles;

/// <summary>Dots of a run in the making: in a scratch folder of the run's name that outlives a kill, then beside the run's other files in one step.</summary>
/// <remarks>
/// The folder holds the identity of all inputs; only a make with the same identity goes on with what lies there. A lock that its maker keeps open
/// lets one make at a time in, in this process or another.
/// </remarks>
internal sealed class DotFolder : IDisposable
{
    private readonly string root;
    private readonly FileStream held;

    private DotFolder(string root, FileStream held)
    {
        this.root = root;
        this.held = held;
    }

    /// <summary>Dot files, finished or not.</summary>
    public string FilesPath => Path.Combine(root, "files");

    /// <summary>Journals.</summary>
    public string WorkPath => Path.Combine(root, "work");

    /// <summary>Why a make that was to be gone on with starts anew; null where it does not.</summary>
    public string? Anew { get; private init; }

    /// <summary>Opens the folder of a run.</summary>
    /// <param name="scratchFolder">Scratch, on the file system of the runs.</param>
    /// <param name="runId">The run; a plain name.</param>
    /// <param name="identity">Hash of all that goes into the dots.</param>
    /// <param name="resume">Whether to go on with what lies there.</param>
    public static Reading<DotFolder> Open(string scratchFolder, string runId, string identity, bool resume)
    {
        if (runId.Length == 0 || runId[0] == '.' || Path.GetFileName(runId) != runId)
            throw new ArgumentException(Invariant($"Run id: found \"{runId}\"; wanted a plain name."), nameof(runId));
        string root = Path.Combine(scratchFolder, runId + ".dots");
        Directory.CreateDirectory(root);
        if (Lock(Path.Combine(root, "lock")) is not { } held)
        {
            return Reading.Refused<DotFolder>(new InputFault(
                Invariant($"run {runId}"), null, "dots", "a make of them that goes on elsewhere", "one make at a time"));
        }

        string job = Path.Combine(root, "job");
        string? earlier = File.Exists(job) ? File.ReadAllText(job) : null;
        string? anew = !resume || earlier == identity ? null
            : earlier is null ? "there is no broken-off make: starts anew" : "inputs or program changed since the make that was broken off: starts anew";
        DotFolder folder = new(root, held) { Anew = anew };
        if (!resume || anew is not null)
            folder.Clear();
        Directory.CreateDirectory(folder.FilesPath);
        Directory.CreateDirectory(folder.WorkPath);
        File.WriteAllText(job, identity);
        return Reading.Of(folder);
    }

    /// <summary>Bytes that lie there.</summary>
    public long BytesThere => new DirectoryInfo(FilesPath).EnumerateFiles().Sum(f => f.Length);

    /// <summary>Forgets what was made: its plates turned out to be wrong.</summary>
    public void Clear()
    {
        File.Delete(Path.Combine(root, "job"));
        foreach (string folder in new[] { FilesPath, WorkPath }.Where(Directory.Exists))
            Directory.Delete(folder, recursive: true);
    }

    /// <summary>Puts the dots beside the run's other files, in one step, and removes scratch.</summary>
    /// <param name="runFolder">The run's folder, whole.</param>
    /// <param name="others">Its files that stay.</param>
    /// <param name="manifest">The new manifest.</param>
    /// <param name="cancellation">Looked at until the step itself.</param>
    public void Publish(string runFolder, IReadOnlyList<ManifestEntry> others, JsonObject manifest, CancellationToken cancellation)
    {
        foreach (ManifestEntry other in others)
        {
            string name = Path.GetFileName(other.Name), link = Path.Combine(FilesPath, name);
            File.Delete(link);
            NativeFolder.Link(Path.Combine(runFolder, name), link);
        }

        using (FileStream stream = File.Create(Path.Combine(FilesPath, "manifest.json")))
        using (Utf8JsonWriter json = new(stream, Manifest.Layout))
            manifest.WriteTo(json);
        foreach (string file in Directory.GetFiles(FilesPath))
        {
            cancellation.ThrowIfCancellationRequested();
            using SafeFileHandle handle = File.OpenHandle(file, FileMode.Open, FileAccess.ReadWrite);
            RandomAccess.FlushToDisk(handle);
        }

        NativeFolder.Flush(FilesPath);
        File.Delete(Path.Combine(root, "job"));
        NativeFolder.Swap(FilesPath, runFolder);
        NativeFolder.Flush(Path.GetDirectoryName(runFolder)!);
        Clear();
    }

    /// <summary>Lets the next make in; what lies in scratch stays for it, and an empty folder goes.</summary>
    public void Dispose()
    {
        held.Dispose();
        if (!File.Exists(Path.Combine(root, "job")))
            Directory.Delete(root, recursive: true);
    }

    private static FileStream? Lock(string path)
    {
        try
        {
            return new(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException)
        {
            return null;
        }
    }
}
