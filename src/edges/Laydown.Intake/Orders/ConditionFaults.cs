using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;

namespace Laydown.Intake.Orders;

/// <summary>What in a print condition refers to nothing, or contradicts its press and ink set.</summary>
internal sealed class ConditionFaults(
    IReadOnlyList<PressDescription> presses, IReadOnlyList<InkSet> inkSets, IReadOnlyList<Stock> stocks, string profilesFolder)
{
    /// <summary>Every fault, each with JSON path.</summary>
    public IEnumerable<InputFault> Of(string file, PrintCondition condition) =>
        [.. Press(file, condition), .. Inks(file, condition), .. Stocks(file, condition), .. Profile(file, condition), .. Curves(file, condition)];

    private IEnumerable<InputFault> Press(string file, PrintCondition condition)
    {
        PressDescription? press = presses.FirstOrDefault(p => p.Id == condition.PressId);
        if (press is null)
        {
            yield return new(file, null, "/pressId", condition.PressId, OneOf(presses.Select(p => p.Id)));
            yield break;
        }

        foreach ((int i, string id) in condition.ModeIds.Index().Where(m => press.FindMode(m.Item) is null))
            yield return new(file, null, Invariant($"/modeIds/{i}"), id, OneOf(press.Modes.Select(m => m.Id)));

        // Every channel of the press needs an ink of the set.
        InkSet? set = inkSets.FirstOrDefault(s => s.Id == condition.InkSetId);
        foreach (InkRole role in press.Channels.Select(c => c.Role).Distinct().Where(r => set is not null && set.Find(r) is null))
            yield return new(file, null, "/inkSetId", Invariant($"a set without {role}"), Invariant($"a set with an ink for every channel of {press.Id}"));
        foreach (InkRole role in press.Channels.Select(c => c.Role).Distinct().Where(r => condition.Inks.All(i => i.Role != r)))
            yield return new(file, null, "/inks", Invariant($"no limit for {role}"), Invariant($"one entry for every ink of {press.Id}"));
    }

    private IEnumerable<InputFault> Inks(string file, PrintCondition condition)
    {
        if (inkSets.All(s => s.Id != condition.InkSetId))
            yield return new(file, null, "/inkSetId", condition.InkSetId, OneOf(inkSets.Select(s => s.Id)));
        foreach ((int i, InkLimit ink) in condition.Inks.Index().Where(i => condition.Inks.Take(i.Index).Any(e => e.Role == i.Item.Role)))
            yield return new(file, null, Invariant($"/inks/{i}/role"), ink.Role.ToString(), "each role once");
    }

    private IEnumerable<InputFault> Stocks(string file, PrintCondition condition) =>
        condition.StockIds.Index().Where(s => stocks.All(known => known.Id != s.Item))
            .Select(s => new InputFault(file, null, Invariant($"/stockIds/{s.Index}"), s.Item, OneOf(stocks.Select(known => known.Id))));

    private IEnumerable<InputFault> Profile(string file, PrintCondition condition)
    {
        // The schema lets no folder into the name; the file has to be there.
        if (!File.Exists(Path.Combine(profilesFolder, condition.Profile)))
            yield return new(file, null, "/profile", condition.Profile, "an ICC profile that lies in the folder profiles");
        if (condition.InkProfile is { } all && !File.Exists(Path.Combine(profilesFolder, all)))
            yield return new(file, null, "/inkProfile", all, "an ICC profile that lies in the folder profiles");
        if (condition.InkLink is { } link && !File.Exists(Path.Combine(profilesFolder, link)))
            yield return new(file, null, "/inkLink", link, "a device link that lies in the folder profiles");
    }

    private static IEnumerable<InputFault> Curves(string file, PrintCondition condition)
    {
        foreach ((int i, InkLimit ink) in condition.Inks.Index())
        {
            bool rises = ink.Curve[0] == 0 && ink.Curve[^1] == 100 && ink.Curve.Zip(ink.Curve.Skip(1)).All(p => p.Second >= p.First);
            if (!rises)
                yield return new(file, null, Invariant($"/inks/{i}/curve"), Invariant($"{ink.Curve[0]} … {ink.Curve[^1]}"), "values that rise from 0 to 100");
        }
    }

    private static string OneOf(IEnumerable<string> ids) => "one of " + string.Join(", ", ids.Take(30));
}
