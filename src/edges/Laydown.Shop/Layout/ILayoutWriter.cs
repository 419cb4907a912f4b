using Laydown.Layout.Jobs;
using Laydown.Measures;

namespace Laydown.Shop.Layout;

/// <summary>Writes layouts of jobs into folders.</summary>
public interface ILayoutWriter
{
    /// <summary>The files, nothing written.</summary>
    /// <param name="layout">The layout.</param>
    /// <param name="formats">What is wanted.</param>
    /// <param name="made">Instant written into files that carry one.</param>
    IReadOnlyList<LayoutFile> Files(JobLayout layout, IReadOnlyList<LayoutFormat> formats, DateTimeOffset made);

    /// <summary>Writes files beside those that are there; each is whole or as it was before.</summary>
    /// <param name="layout">The layout.</param>
    /// <param name="folder">Where to; made where it is missing.</param>
    /// <param name="formats">What is wanted.</param>
    /// <param name="made">Instant written into files that carry one.</param>
    /// <returns>Names of the files written, or why they cannot be.</returns>
    Reading<IReadOnlyList<string>> Write(JobLayout layout, string folder, IReadOnlyList<LayoutFormat> formats, DateTimeOffset made);
}
