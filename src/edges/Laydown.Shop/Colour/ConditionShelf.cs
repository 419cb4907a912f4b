using System.Security.Cryptography;
using System.Text.Json;
using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Shop.Run;

namespace Laydown.Shop.Colour;

/// <summary>Print conditions on the disk with their models; the condition's own file is replaced last, so that a kill leaves the old one or the new one whole.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="files">Reads and writes.</param>
internal sealed class ConditionShelf(ShopFolder folder, IColourFiles files)
{
    internal const string FitFile = "fit.json";
    internal const string ReportFile = "report.json";
    internal const string ReadingsFile = "readings.txt";
    private const string KeptFolder = "kept";

    /// <summary>All conditions that can be read, by id.</summary>
    internal IReadOnlyList<PrintCondition> All() => [.. Described().Select(d => d.Condition).OrderBy(c => c.Id, StringComparer.Ordinal)];

    /// <summary>A condition with its file, or the fault.</summary>
    internal Reading<(string Path, PrintCondition Condition)> Find(string id)
    {
        List<(string Path, PrintCondition Condition)> all = [.. Described()];
        int at = all.FindIndex(d => d.Condition.Id == id);
        return at >= 0
            ? Reading.Of(all[at])
            : Reading.Refused<(string, PrintCondition)>(new InputFault(
                "catalogue", null, "print condition", Invariant($"'{id}'"), "one of " + string.Join(", ", all.Select(d => d.Condition.Id))));
    }

    /// <summary>A condition with its model, which it must have.</summary>
    internal Reading<(string Path, PrintCondition Condition, PrintModel Print)> Fitted(string id) => Find(id).Then(found =>
        found.Condition.Characterisation is { } kept
            ? FitText.Read(Path.Combine(FolderOf(id, kept), FitFile)).Then(print => Reading.Of((found.Path, found.Condition, print)))
            : Reading.Refused<(string, PrintCondition, PrintModel)>(new InputFault(
                Path.GetFileName(found.Path), null, "/characterisation", "none", "a condition fitted to readings: laydown condition fit")));

    /// <summary>Folder of a characterisation.</summary>
    internal string FolderOf(string id, Characterisation kept) => Path.Combine(folder.Characterisations, id, kept.Folder);

    /// <summary>Everything known of a condition's colour.</summary>
    internal Reading<ConditionView> View(string id) => Find(id).Then(found =>
    {
        if (found.Condition.Characterisation is not { } kept)
            return Reading.Of(new ConditionView(found.Condition, null, null, Kept(id)));
        string place = FolderOf(id, kept);
        return FitText.Read(Path.Combine(place, FitFile)).Then(print => ReadOwn<FitReport>(Path.Combine(place, ReportFile))
            .Then(report => Reading.Of(new ConditionView(found.Condition, print, report, Kept(id)))));
    });

    /// <summary>Readings taken since, oldest first; one that cannot be read is left.</summary>
    internal IReadOnlyList<KeptReading> Kept(string id)
    {
        string place = Path.Combine(folder.Characterisations, id, KeptFolder);
        return !Directory.Exists(place) ? [] : [.. Directory.GetFiles(place, "*.json").Order(StringComparer.Ordinal)
            .Select(ReadOwn<KeptReading>).Where(r => r.IsTaken).Select(r => r.Value).OrderBy(r => r.Taken)];
    }

    /// <summary>Keeps a reading: its text first, then the file that makes it count.</summary>
    internal async Task KeepAsync(string id, KeptReading reading, byte[] text, CancellationToken cancellation)
    {
        string place = Path.Combine(folder.Characterisations, id, KeptFolder);
        await WholeFile.WriteAsync(Path.Combine(place, reading.Id + ".txt"), text, cancellation);
        await WholeFile.WriteAsync(
            Path.Combine(place, reading.Id + ".json"), JsonSerializer.SerializeToUtf8Bytes(reading, ShopJson.Readable), cancellation);
    }

    /// <summary>Saves a fit: its folder first, then the condition that names it.</summary>
    internal async Task<PrintCondition> SaveFitAsync(string path, PrintCondition condition, FitOutcome fit, DateOnly day, CancellationToken cancellation)
    {
        byte[] readings = files.ReadingsText(fit.Readings), model = FitText.Write(fit.Readings.Name, fit.Print);
        string name = Invariant($"{day:yyyy-MM-dd}-{Mark(readings, model)}");
        string place = Path.Combine(folder.Characterisations, condition.Id, name);
        await WholeFile.WriteAsync(Path.Combine(place, ReadingsFile), readings, cancellation);
        await WholeFile.WriteAsync(Path.Combine(place, ReportFile), JsonSerializer.SerializeToUtf8Bytes(fit.Report, ShopJson.Readable), cancellation);
        await WholeFile.WriteAsync(Path.Combine(place, FitFile), model, cancellation);
        Laydown.Colour.Fits.ResidualSummary held = fit.Print.CrossValidated;
        PrintCondition changed = condition with
        {
            Characterisation = new(name, Short(fit.Readings.Name), day, held.Count, Round(held.Mean), Round(held.P95), Round(held.Max)),
        };
        await WholeFile.WriteAsync(path, files.ConditionText(changed), cancellation);
        return changed;
    }

    /// <summary>Saves profile and link under names of their content, then the condition that names them.</summary>
    internal async Task<PrintCondition> SaveProfilesAsync(
        string path, PrintCondition condition, IReadOnlyList<(string Name, byte[] Bytes)> profiles, CancellationToken cancellation)
    {
        foreach ((string name, byte[] bytes) in profiles)
            await WholeFile.WriteAsync(Path.Combine(folder.Profiles, name), bytes, cancellation);
        await WholeFile.WriteAsync(path, files.ConditionText(condition), cancellation);
        return condition;
    }

    /// <summary>First eight hex digits of the content's SHA-256.</summary>
    internal static string Mark(params ReadOnlySpan<byte[]> parts)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (byte[] part in parts)
            hash.AppendData(part);
        return Convert.ToHexStringLower(hash.GetHashAndReset())[..8];
    }

    private IEnumerable<(string Path, PrintCondition Condition)> Described()
    {
        string place = Path.Combine(folder.Catalogue, "conditions");
        string[] all = Directory.Exists(place) ? Directory.GetFiles(place, "*.json") : [];
        Array.Sort(all, StringComparer.Ordinal);
        foreach (string path in all)
        {
            Reading<PrintCondition> read = files.Condition(path);
            if (read.IsTaken)
                yield return (path, read.Value);
        }
    }

    private static Reading<T> ReadOwn<T>(string path)
        where T : class
    {
        try
        {
            return JsonSerializer.Deserialize<T>(File.ReadAllBytes(path), ShopJson.Readable) is { } record
                ? Reading.Of(record)
                : Refused<T>(path, "null");
        }
        catch (Exception e) when (e is JsonException or IOException or UnauthorizedAccessException or ArgumentException)
        {
            return Refused<T>(path, e.Message);
        }
    }

    private static Reading<T> Refused<T>(string path, string found) =>
        Reading.Refused<T>(new InputFault(Path.GetFileName(path), null, "file", found, "a file as the product wrote it"));

    private static string Short(string name) => name.Length is 0 ? "readings" : name.Length > 200 ? name[..200] : name;

    private static double Round(double value) => Math.Round(value, 4);
}
