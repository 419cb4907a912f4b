using System.Security.Cryptography;
using Laydown.Measures;
using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>Compares run folders as they lie there, row by row: two rows of each file are held at once.</summary>
public sealed class MakeComparison : IMakeComparison
{
    private const string ManifestName = "manifest.json";

    /// <inheritdoc/>
    public Reading<IReadOnlyList<FileDifference>> Compare(string firstFolder, string secondFolder, CancellationToken cancellation)
    {
        string[] missing = [.. new[] { firstFolder, secondFolder }.Where(f => !File.Exists(Path.Combine(f, ManifestName)))];
        if (missing.Length > 0)
        {
            return Reading.Refused<IReadOnlyList<FileDifference>>([.. missing.Select(f => new InputFault(
                Path.GetFileName(Path.TrimEndingDirectorySeparator(f)), null, "folder", Invariant($"no {ManifestName} in it"), "the folder of a made run"))]);
        }

        List<FileDifference> found = [];
        List<InputFault> faults = [];
        foreach (string name in Names(firstFolder).Union(Names(secondFolder), StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            Reading<FileDifference> one = CompareFile(name, Path.Combine(firstFolder, name), Path.Combine(secondFolder, name), cancellation);
            if (one.IsTaken)
                found.Add(one.Value);
            else
                faults.AddRange(one.Faults);
        }

        return faults.Count > 0 ? Reading.Refused<IReadOnlyList<FileDifference>>(faults) : Reading.Of<IReadOnlyList<FileDifference>>(found);
    }

    private static IEnumerable<string> Names(string folder) => Directory.GetFiles(folder).Select(f => Path.GetFileName(f)).Where(n => n != ManifestName);

    private static Reading<FileDifference> CompareFile(string name, string first, string second, CancellationToken cancellation)
    {
        try
        {
            if (!File.Exists(second))
                return Reading.Of(new FileDifference(name, Sameness.OnlyFirst, new FileInfo(first).Length, null, null));
            if (!File.Exists(first))
                return Reading.Of(new FileDifference(name, Sameness.OnlySecond, null, new FileInfo(second).Length, null));
            (long one, long other) = (new FileInfo(first).Length, new FileInfo(second).Length);
            if (one == other && SameBytes(first, second, cancellation))
                return Reading.Of(new FileDifference(name, Sameness.SameBytes, one, other, null));
            return name.EndsWith(".tif", StringComparison.Ordinal)
                ? ComparePixels(first, second, cancellation).Then(pixels => Reading.Of(new FileDifference(
                    name, pixels is null ? Sameness.OtherShape : pixels.Different > 0 ? Sameness.OtherPixels : Sameness.SamePixels, one, other, pixels?.Different > 0 ? pixels : null)))
                : Reading.Of(new FileDifference(name, Sameness.OtherBytes, one, other, null));
        }
        catch (Exception e) when (DiskFault.IsFault(e))
        {
            return Reading.Refused<FileDifference>(new InputFault(name, null, "file", e.Message, "a press file that can be read to its end"));
        }
    }

    private static bool SameBytes(string first, string second, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        using FileStream one = File.OpenRead(first), other = File.OpenRead(second);
        return SHA256.HashData(one).AsSpan().SequenceEqual(SHA256.HashData(other));
    }

    // Null where the two have not the same shape.
    private static Reading<PixelDifference?> ComparePixels(string first, string second, CancellationToken cancellation)
    {
        Reading<PressRows> one = PressRows.Open(first);
        using PressRows? held = one.IsTaken ? one.Value : null;
        Reading<PressRows> other = PressRows.Open(second);
        using PressRows? otherHeld = other.IsTaken ? other.Value : null;
        if (held is null || otherHeld is null)
            return Reading.Refused<PixelDifference?>([.. one.Faults, .. other.Faults]);
        return Reading.Of(held.SameShape(otherHeld) ? new PixelCount(held.Inks, held.Columns).Over(held, otherHeld, cancellation) : null);
    }
}
