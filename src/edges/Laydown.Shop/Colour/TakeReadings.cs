using Laydown.Colour.Readings;
using Laydown.Measures;
using Laydown.Shop.Run;

namespace Laydown.Shop.Colour;

/// <summary>Takes a file of readings in: as it came, under its own name, in the shop's readings.</summary>
/// <param name="folder">The shop's folder; null only looks and keeps nothing.</param>
/// <param name="files">Reads.</param>
public sealed class TakeReadings(ShopFolder? folder, IColourFiles files)
{
    /// <summary>Reads, averages repeats, names outliers, and keeps the file; a refused file is not kept.</summary>
    /// <param name="name">Name of the file without folder.</param>
    /// <param name="bytes">The whole file.</param>
    /// <param name="cancellation">Stops before keeping.</param>
    public async Task<Reading<TakenReadings>> TakeAsync(string name, ReadOnlyMemory<byte> bytes, CancellationToken cancellation)
    {
        if (name.Length is 0 or > 100 || name.StartsWith('.') || !name.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' or '.'))
        {
            return Reading.Refused<TakenReadings>(new InputFault(
                new string([.. name.Take(60).Select(c => char.IsControl(c) ? '?' : c)]), null, "name", "other characters",
                "1 to 100 letters, digits, dots, hyphens or underscores, not starting with a dot"));
        }

        Reading<ReadingSet> read = files.Readings(name, bytes);
        if (!read.IsTaken)
            return Reading.Refused<TakenReadings>(read.Faults);
        AveragedReadings averaged = RepeatAverage.Of(read.Value);
        if (folder is null)
            return Reading.Of(new TakenReadings(null, read.Value, averaged));

        string path = Path.Combine(folder.Readings, name);
        if (File.Exists(path) && !(await File.ReadAllBytesAsync(path, cancellation)).AsSpan().SequenceEqual(bytes.Span))
        {
            return Reading.Refused<TakenReadings>(new InputFault(
                name, null, "name", "other readings of that name in the shop", "a new name; readings are never changed"));
        }

        await WholeFile.WriteAsync(path, bytes, cancellation);
        return Reading.Of(new TakenReadings(name, read.Value, averaged));
    }
}
