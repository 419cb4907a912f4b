using Laydown.Layout.Jobs;
using Laydown.Measures;

namespace Laydown.Shop.Layout;

/// <summary>Writes layouts as JSON and as cut paths in SVG, DXF and PDF: of jobs and of runs, on the command line and over HTTP.</summary>
/// <param name="writer">Writes files of layouts.</param>
public sealed class ExportLayout(ILayoutWriter writer)
{
    /// <summary>The files, nothing written.</summary>
    /// <param name="layout">The layout.</param>
    /// <param name="name">Name of the layout for messages.</param>
    /// <param name="formats">What is wanted.</param>
    /// <param name="made">Instant written into files that carry one.</param>
    /// <returns>The files, or how the layout breaks its own rules: it may have been changed by hand, and a cutter is not sent along it.</returns>
    public Reading<IReadOnlyList<LayoutFile>> Files(JobLayout layout, string name, IReadOnlyList<LayoutFormat> formats, DateTimeOffset made) =>
        Broken(layout, name) is { Count: > 0 } faults ? Reading.Refused<IReadOnlyList<LayoutFile>>(faults) : Reading.Of(writer.Files(layout, formats, made));

    /// <summary>Writes them into a folder, each whole or as it was before.</summary>
    /// <param name="layout">The layout.</param>
    /// <param name="name">Name of the layout for messages.</param>
    /// <param name="folder">Where to; made where it is missing.</param>
    /// <param name="formats">What is wanted.</param>
    /// <param name="made">Instant written into files that carry one.</param>
    /// <returns>Names of the files, how the layout breaks its own rules, or why they cannot be written.</returns>
    public Reading<IReadOnlyList<string>> Write(JobLayout layout, string name, string folder, IReadOnlyList<LayoutFormat> formats, DateTimeOffset made) =>
        Broken(layout, name) is { Count: > 0 } faults ? Reading.Refused<IReadOnlyList<string>>(faults) : writer.Write(layout, folder, formats, made);

    /// <summary>How a layout breaks its own rules; empty for a sound one.</summary>
    public static IReadOnlyList<InputFault> Broken(JobLayout layout, string name) =>
        [.. JobChecks.Faults(layout).Select(f => new InputFault(name, null, f.Field, f.Found, f.Wanted))];
}
