using Laydown.Formats.Json;
using Laydown.Intake.Run;
using Laydown.Measures;
using Laydown.Plan.Calendar;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;
using Laydown.Shop.Layers;
using Laydown.Shop.Orders;

namespace Laydown.Intake.Orders;

/// <summary>Reads the shop's own descriptions and checks that they fit together.</summary>
public sealed class CatalogueReader : ICatalogueReader
{
    private const int MostFilesInFolder = 1000;

    /// <inheritdoc/>
    public Reading<Catalogue> Read(string folder)
    {
        // Read everything first, so that one call names every faulty file.
        List<InputFault> faults = [];
        ShopFile? shop = Taken(LaydownJson.ReadFile<ShopFile>(Path.Combine(folder, "shop.json")), faults);
        List<Described<PressDescription>> presses = ReadAll<PressDescription>(folder, "presses", faults);
        List<Described<InkSet>> inks = ReadAll<InkSet>(folder, "inks", faults);
        List<Described<InkOptics>> optics = ReadAll<InkOptics>(folder, "optics", faults, fewest: 0);
        List<Described<Stock>> stocks = ReadAll<Stock>(folder, "stocks", faults);
        List<Described<PrintCondition>> conditions = ReadAll<PrintCondition>(folder, "conditions", faults);

        ShopCalendar? calendar = ReadCalendar(folder, presses, faults);

        // Then each by itself, then what one says of the other.
        faults.AddRange(Twice(presses, p => p.Id));
        faults.AddRange(Twice(inks, i => i.Id));
        faults.AddRange(Twice(optics, o => o.Id));
        faults.AddRange(Twice(stocks, s => s.Id));
        faults.AddRange(Twice(conditions, c => c.Id));
        faults.AddRange(shop is null ? [] : RatesFaults.Of("shop.json", shop.Rates));
        faults.AddRange(presses.SelectMany(p => PressFaults.Of(p.File, p.Record)));
        faults.AddRange(inks.SelectMany(i => RolesTwice(i.File, i.Record)));
        faults.AddRange(optics.SelectMany(o => InkOpticsFaults.Of(o.File, o.Record)));
        faults.AddRange(stocks.SelectMany(s => StackLights.SheetOf(s.Record).Faults.Select(f => f with { File = s.File })));
        faults.AddRange(stocks.SelectMany(s => OtherSizes(s, stocks)));
        OpticsLinks optical = new([.. inks.Select(i => i.Record)], [.. optics.Select(o => o.Record)]);
        faults.AddRange(optics.SelectMany(o => optical.Of(o.File, o.Record)));
        faults.AddRange(inks.SelectMany(i => optical.Of(i.File, i.Record)));
        faults.AddRange(conditions.SelectMany(c => optical.Of(c.File, c.Record)));
        ConditionFaults links = new(
            [.. presses.Select(p => p.Record)], [.. inks.Select(i => i.Record)], [.. stocks.Select(s => s.Record)], Path.Combine(folder, "profiles"));
        faults.AddRange(conditions.SelectMany(c => links.Of(c.File, c.Record)));

        return faults.Count > 0
            ? Reading.Refused<Catalogue>(faults)
            : Reading.Of(new Catalogue(
                shop!.Name,
                folder,
                [.. presses.Select(p => p.Record)],
                [.. inks.Select(i => i.Record)],
                [.. stocks.Select(s => s.Record)],
                [.. conditions.Select(c => c.Record)],
                shop.Rates)
            { Optics = [.. optics.Select(o => o.Record)], Calendar = calendar, Releasers = shop.Releasers ?? [], Address = (shop.Address ?? "").TrimEnd('/') });
    }

    private static ShopCalendar? ReadCalendar(string folder, List<Described<PressDescription>> presses, List<InputFault> faults)
    {
        const string Name = "calendar.json";
        string path = Path.Combine(folder, Name);
        ShopCalendar? calendar = File.Exists(path) ? Taken(LaydownJson.ReadFile<ShopCalendar>(path), faults) : null;
        if (calendar is not null)
            faults.AddRange(CalendarFaults.Of(calendar, Name, [.. presses.Select(p => p.Record.Id)]));
        return calendar;
    }

    private static List<Described<T>> ReadAll<T>(string folder, string room, List<InputFault> faults, int fewest = 1)
        where T : class
    {
        string path = Path.Combine(folder, room);
        string[] files = Directory.Exists(path) ? Directory.GetFiles(path, "*.json") : [];
        Array.Sort(files, StringComparer.Ordinal);
        if (files.Length < fewest || files.Length > MostFilesInFolder)
            faults.Add(new(room, null, "folder", Invariant($"{files.Length} JSON files"), Invariant($"{fewest} to {MostFilesInFolder}")));

        List<Described<T>> all = [];
        foreach (string file in files.Take(MostFilesInFolder))
        {
            if (Taken(LaydownJson.ReadFile<T>(file), faults) is { } record)
                all.Add(new(Path.GetFileName(file), record));
        }

        return all;
    }

    private static T? Taken<T>(Reading<T> reading, List<InputFault> faults)
        where T : class
    {
        faults.AddRange(reading.Faults);
        return reading.IsTaken ? reading.Value : null;
    }

    private static IEnumerable<InputFault> Twice<T>(List<Described<T>> all, Func<T, string> id) =>
        all.GroupBy(d => id(d.Record), StringComparer.Ordinal).Where(g => g.Count() > 1)
            .SelectMany(g => g.Skip(1).Select(d => new InputFault(d.File, null, "/id", g.Key, Invariant($"an id other than that of {g.First().File}"))));

    private static IEnumerable<InputFault> RolesTwice(string file, InkSet set) =>
        set.Inks.Index().Where(i => set.Inks.Take(i.Index).Any(earlier => earlier.Role == i.Item.Role))
            .Select(i => new InputFault(file, null, Invariant($"/inks/{i.Index}/role"), i.Item.Role.ToString(), "each role once"));

    // Another size is planned with the print condition of its board, so it must be the same material.
    private static IEnumerable<InputFault> OtherSizes(Described<Stock> size, List<Described<Stock>> stocks)
    {
        if (size.Record.OtherSizeOf is not string id)
            yield break;
        Stock? board = stocks.Select(s => s.Record).FirstOrDefault(s => string.Equals(s.Id, id, StringComparison.Ordinal) && !ReferenceEquals(s, size.Record));
        if (board is null || board.OtherSizeOf is not null)
            yield return new(size.File, null, "/otherSizeOf", id, "the id of another stock that is no other size itself");
        else if (board.Kind == StockKind.Blank || size.Record.Kind != board.Kind)
            yield return new(size.File, null, "/otherSizeOf", Invariant($"{size.Record.Kind} of a {board.Kind}"), "a board of a board, or a roll of a roll");
        else if (!IsSame(board, size.Record))
            yield return new(size.File, null, "/otherSizeOf", Invariant($"{size.Record.Material}, {size.Record.ThicknessMm} mm"), Invariant($"material, thickness, grain or none, and light of {id}: {board.Material}, {board.ThicknessMm} mm"));
    }

    private static bool IsSame(Stock one, Stock other) =>
        string.Equals(one.Material, other.Material, StringComparison.Ordinal) && one.ThicknessMm.Equals(other.ThicknessMm)
        && (one.Grain == GrainDirection.None) == (other.Grain == GrainDirection.None) && one.Light == other.Light;

    private sealed record Described<T>(string File, T Record);
}
