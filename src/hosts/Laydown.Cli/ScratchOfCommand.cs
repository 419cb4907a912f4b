namespace Laydown.Cli;

/// <summary>Temporary files of one command that works without a shop; gone at its end.</summary>
internal sealed class ScratchOfCommand : IDisposable
{
    /// <summary>Full path of the folder.</summary>
    public string FullPath { get; } = Directory.CreateTempSubdirectory("laydown-").FullName;

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(FullPath, recursive: true);
}
