namespace Laydown.Intake.Artwork;

/// <summary>A folder of one job's temporary files; gone, with all in it, when disposed.</summary>
internal sealed class ScratchFolder : IDisposable
{
    public ScratchFolder(string within)
    {
        FullPath = Path.Combine(Path.GetFullPath(within), "job-" + Guid.NewGuid().ToString("N"));
        Directory.CreateDirectory(FullPath);
    }

    /// <summary>Full path of the folder.</summary>
    public string FullPath { get; }

    /// <summary>Full path of a file in it.</summary>
    public string File(string name) => Path.Combine(FullPath, name);

    /// <inheritdoc/>
    public void Dispose()
    {
        if (Directory.Exists(FullPath))
            Directory.Delete(FullPath, recursive: true);
    }
}
