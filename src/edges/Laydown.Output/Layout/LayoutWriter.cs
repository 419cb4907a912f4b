using Laydown.Formats.Json;
using Laydown.Formats.Layouts;
using Laydown.Layout.Jobs;
using Laydown.Measures;
using Laydown.Output.PressFiles;
using Laydown.Shop.Layout;

namespace Laydown.Output.Layout;

/// <inheritdoc/>
public sealed class LayoutWriter : ILayoutWriter
{
    /// <inheritdoc/>
    public IReadOnlyList<LayoutFile> Files(JobLayout layout, IReadOnlyList<LayoutFormat> formats, DateTimeOffset made)
    {
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(formats);
        return [.. formats.Distinct().Order().SelectMany(f => Files(layout, f, made).Select(p => new LayoutFile(p.Name, f, p.Bytes)))];
    }

    /// <inheritdoc/>
    public Reading<IReadOnlyList<string>> Write(JobLayout layout, string folder, IReadOnlyList<LayoutFormat> formats, DateTimeOffset made)
    {
        // All is made before the first byte is written, and written beside before the first file is moved in place.
        IReadOnlyList<LayoutFile> files = Files(layout, formats, made);
        string mark = Invariant($".{Guid.NewGuid():N}.part");
        List<string> beside = [];
        string current = folder;
        try
        {
            Directory.CreateDirectory(folder);
            foreach ((string name, _, byte[] bytes) in files)
            {
                current = name;
                beside.Add(Path.Combine(folder, name + mark));
                using FileStream stream = new(beside[^1], FileMode.CreateNew, FileAccess.Write, FileShare.None);
                stream.Write(bytes);
                stream.Flush(flushToDisk: true);
            }

            foreach ((string name, _, _) in files)
                File.Move(Path.Combine(folder, name + mark), Path.Combine(folder, name), overwrite: true);
            return Reading.Of<IReadOnlyList<string>>([.. files.Select(f => f.Name)]);
        }
        catch (Exception e) when (DiskFault.IsFault(e))
        {
            return Reading.Refused<IReadOnlyList<string>>(DiskFault.Of(e, Path.GetFileName(current), folder));
        }
        finally
        {
            beside.Where(File.Exists).ToList().ForEach(File.Delete);
        }
    }

    private static IEnumerable<(string Name, byte[] Bytes)> Files(JobLayout layout, LayoutFormat format, DateTimeOffset made) => format switch
    {
        LayoutFormat.Json => [("layout.json", LaydownJson.ToBytes(layout))],
        LayoutFormat.Svg => LayoutFiles.Svg(layout).Select((b, i) => (layout.Lanes is null ? Invariant($"sheet-{i + 1:00}.svg") : "belt.svg", b)),
        LayoutFormat.Dxf => LayoutFiles.Dxf(layout).Select((b, i) => (layout.Lanes is null ? Invariant($"sheet-{i + 1:00}.dxf") : "belt.dxf", b)),
        _ when layout.Lanes is not null => [("belt.pdf", LayoutFiles.Pdf(layout, made))],
        _ => layout.Sheets.Count == 0 ? [] : [("cut.pdf", LayoutFiles.Pdf(layout, made))],
    };
}
