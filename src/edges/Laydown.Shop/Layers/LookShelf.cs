using System.Text.Json;
using Laydown.Measures;

namespace Laydown.Shop.Layers;

/// <summary>The looks of a shop: one folder for each item, in it one for each look.</summary>
/// <param name="folder">The shop's folder.</param>
public sealed class LookShelf(ShopFolder folder)
{
    private const long MostRecordBytes = 16 << 20;

    /// <summary>All looks of an item by number; a folder whose record cannot be read is left out.</summary>
    public IReadOnlyList<LookRecord> List(string itemId)
    {
        string place = Path.Combine(folder.Looks, itemId);
        if (!LookFolders.IsPlain(itemId) || !Directory.Exists(place))
            return [];
        return [.. Directory.GetDirectories(place).Select(Path.GetFileName).OfType<string>()
            .Select(name => (Name: name, Number: LookFolders.NumberOf(name)))
            .Where(n => n.Number is not null).OrderBy(n => n.Number)
            .Select(n => Find(itemId, n.Name)).Where(r => r.IsTaken).Select(r => r.Value)];
    }

    /// <summary>One look, or why there is none: no such folder, a record that cannot be read, planes of another length than it says.</summary>
    public Reading<LookRecord> Find(string itemId, string lookId)
    {
        if (!LookFolders.IsPlain(itemId) || LookFolders.NumberOf(lookId) is null)
            return Refused(lookId, "look", Invariant($"'{lookId}' of '{itemId}'"), "an id such as L-1 of an item of this shop");
        string place = FolderOf(itemId, lookId);
        return Directory.Exists(place)
            ? Read(place, lookId)
            : Refused(lookId, "look", Invariant($"no look {lookId} of {itemId}"), "a look of that item; laydown panel list names them");
    }

    /// <summary>The look in any folder, or why it cannot be taken.</summary>
    /// <param name="place">Full path of its folder.</param>
    /// <param name="name">Name for messages.</param>
    public static Reading<LookRecord> Read(string place, string name)
    {
        FileInfo file = new(Path.Combine(place, LookFolders.RecordFile));
        if (!file.Exists || file.Length > MostRecordBytes)
            return Refused(name, LookFolders.RecordFile, file.Exists ? Invariant($"{file.Length} bytes") : "no such file", "the record of a look");
        try
        {
            return JsonSerializer.Deserialize<LookRecord>(File.ReadAllBytes(file.FullName), ShopJson.Readable) is { } record
                ? Checked(record, place, name)
                : Refused(name, LookFolders.RecordFile, "null", "the record of a look");
        }
        catch (Exception e) when (e is JsonException or ArgumentException or IOException or UnauthorizedAccessException)
        {
            return Refused(name, LookFolders.RecordFile, e.Message, "the record of a look as it was written");
        }
    }

    /// <summary>Full path of a look's folder.</summary>
    /// <exception cref="ArgumentException">One of the ids is no plain name.</exception>
    public string FolderOf(string itemId, string lookId) => LookFolders.IsPlain(itemId) && LookFolders.IsPlain(lookId)
        ? Path.Combine(folder.Looks, itemId, lookId)
        : throw new ArgumentException(Invariant($"Look: found '{itemId}', '{lookId}'; wanted plain names."), nameof(lookId));

    /// <summary>Starts the folder of a new look of an item.</summary>
    /// <exception cref="ArgumentException">The id is no plain name.</exception>
    public LookDraft Begin(string itemId) => LookFolders.IsPlain(itemId)
        ? new(Path.Combine(folder.Looks, itemId))
        : throw new ArgumentException(Invariant($"Item: found '{itemId}'; wanted a plain name."), nameof(itemId));

    /// <summary>Removes half-made looks of makers that are gone.</summary>
    public void Sweep()
    {
        if (!Directory.Exists(folder.Looks))
            return;
        foreach (string item in Directory.GetDirectories(folder.Looks))
            LookFolders.Sweep(item);
    }

    private static Reading<LookRecord> Checked(LookRecord record, string place, string name)
    {
        FileInfo planes = new(Path.Combine(place, LookRecord.PlanesFile));
        long wanted = (long)record.PlaneCount * record.WidthPx * record.HeightPx;
        return planes.Exists && planes.Length == wanted
            ? Reading.Of(record)
            : Refused(
                name, LookRecord.PlanesFile, planes.Exists ? Invariant($"{planes.Length} bytes") : "no such file",
                Invariant($"{record.PlaneCount} planes × {record.HeightPx} × {record.WidthPx} = {wanted} bytes"));
    }

    private static Reading<LookRecord> Refused(string name, string field, string found, string wanted) =>
        Reading.Refused<LookRecord>(new InputFault(Invariant($"look {name}"), null, field, found, wanted));
}
