using Microsoft.Data.Sqlite;

namespace Laydown.Edges.Tests.Store;

/// <summary>A folder of one test, removed at its end.</summary>
internal sealed class TempFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("laydown-test-").FullName;

    public void Empty()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(Path, recursive: true);
        Directory.CreateDirectory(Path);
    }

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(Path, recursive: true);
    }
}
