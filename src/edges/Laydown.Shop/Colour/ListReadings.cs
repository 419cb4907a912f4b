using Laydown.Measures;

namespace Laydown.Shop.Colour;

/// <summary>Lists the readings that the shop keeps.</summary>
/// <param name="folder">The shop's folder.</param>
public sealed class ListReadings(ShopFolder folder)
{
    /// <summary>Names of the files, newest first.</summary>
    public IReadOnlyList<string> List() => !Directory.Exists(folder.Readings) ? [] : [.. new DirectoryInfo(folder.Readings).GetFiles()
        .Where(f => !f.Name.StartsWith('.')).OrderByDescending(f => f.LastWriteTimeUtc).ThenBy(f => f.Name, StringComparer.Ordinal).Select(f => f.Name)];

    /// <summary>Full path of one of them, or the fault; no part of the name becomes a path.</summary>
    /// <param name="name">Name of the file.</param>
    public Reading<string> Find(string name) => List().FirstOrDefault(n => n == name) is { } found
        ? Reading.Of(Path.Combine(folder.Readings, found))
        : Reading.Refused<string>(new InputFault("readings", null, "name", Invariant($"'{name}'"), "one of " + string.Join(", ", List().Take(30))));
}
