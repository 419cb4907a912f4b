using Laydown.Measures;

namespace Laydown.Shop.Run;

/// <summary>Compares the files of two makes of a run.</summary>
public interface IMakeComparison
{
    /// <summary>Compares two run folders file by file; press files dot by dot. Manifests, which name an instant, are left out.</summary>
    /// <param name="firstFolder">Folder of one make.</param>
    /// <param name="secondFolder">Folder of the other.</param>
    /// <param name="cancellation">Looked at for each row.</param>
    /// <returns>All names of both, in order; or why a folder or file cannot be read.</returns>
    Reading<IReadOnlyList<FileDifference>> Compare(string firstFolder, string secondFolder, CancellationToken cancellation);
}
