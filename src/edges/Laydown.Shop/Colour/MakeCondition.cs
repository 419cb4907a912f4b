using Laydown.Colour.Inversion;
using Laydown.Measures;
using Laydown.Press.Conditions;

namespace Laydown.Shop.Colour;

/// <summary>Makes the profile of a fitted print condition and puts it to use: whole or not at all.</summary>
/// <remarks>Files get names of their content; the condition's own file is replaced last. What runs already made rest on stays where it is.</remarks>
/// <param name="folder">The shop's folder.</param>
/// <param name="files">Reads and writes.</param>
public sealed class MakeCondition(ShopFolder folder, IColourFiles files)
{
    private static readonly string[] Process = ["Cyan", "Magenta", "Yellow", "Black"];

    /// <summary>Makes and saves; on any refusal or cancellation nothing is changed.</summary>
    /// <param name="conditionId">The print condition; it must have been fitted.</param>
    /// <param name="wish">Limits, black, fineness.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    /// <param name="cancellation">Stops between planes of a table.</param>
    public async Task<Reading<ConditionView>> MakeAsync(
        string conditionId, MakeWish wish, IProgress<double>? progress, CancellationToken cancellation)
    {
        ConditionShelf shelf = new(folder, files);
        Reading<(string Path, PrintCondition Condition, PrintModel Print)> found = shelf.Fitted(conditionId);
        if (!found.IsTaken)
            return Reading.Refused<ConditionView>(found.Faults);
        if (wish.Nodes is < 9 or > 65 || wish.Nodes % 2 == 0)
            return Reading.Refused<ConditionView>(new InputFault("separation", null, "nodes", Invariant($"{wish.Nodes}"), "an odd number, 9 to 65"));

        (string path, PrintCondition condition, PrintModel print) = found.Value;
        Reading<InkLimits> limits = SeparationWish.OfCondition(wish.Separation, condition, print).Limits(print.InkNames);
        if (!limits.IsTaken)
            return Reading.Refused<ConditionView>(limits.Faults);
        if (GamutFault(print, limits.Value) is { } none)
            return Reading.Refused<ConditionView>(none);

        List<(string Name, byte[] Bytes)> made = await Task.Run(
            () => Make(condition, print, limits.Value, wish, progress, cancellation), cancellation);
        await shelf.SaveProfilesAsync(path, Changed(condition, print, limits.Value, made), made, cancellation);
        return shelf.View(conditionId);
    }

    private static InputFault? GamutFault(PrintModel print, InkLimits limits)
    {
        double volume = Laydown.Colour.Gamuts.Gamut.Of(print.Model, limits.PerInk, limits.Total).Volume;
        return volume >= 1000
            ? null
            : new("separation", null, "limits", Invariant($"a gamut of {volume:0} cubic Lab units"), "limits that leave colours to print: at least 1000");
    }

    private List<(string Name, byte[] Bytes)> Make(
        PrintCondition condition, PrintModel print, InkLimits limits, MakeWish wish, IProgress<double>? progress, CancellationToken cancellation)
    {
        int forward = print.InkNames.Count switch { <= 4 => 17, 5 => 9, 6 => 7, _ => 5 };
        ProfileTables tables = ProfileTableMaker.Make(
            print.Model, limits, wish.Separation.Policy(), InkWishes.For(print.InkNames), forward, wish.Nodes, progress, cancellation);
        byte[] profile = files.Profile(tables, print.InkNames, Ascii(condition));
        return [(Invariant($"{condition.Id}-{ConditionShelf.Mark(profile)}.icc"), profile)];
    }

    private static PrintCondition Changed(
        PrintCondition condition, PrintModel print, InkLimits limits, List<(string Name, byte[] Bytes)> made)
    {
        bool process = print.InkNames.SequenceEqual(Process, StringComparer.OrdinalIgnoreCase);
        Dictionary<Laydown.Press.Inks.InkRole, double> most = print.InkNames.Index()
            .ToDictionary(n => FitCondition.RoleOf(n.Item)!.Value, n => Math.Round(limits.PerInk[n.Index] * 100, 4));
        return condition with
        {
            Profile = process ? made[0].Name : condition.Profile,
            InkProfile = made[0].Name,
            TotalLimitPercent = Math.Round(limits.Total * 100, 4),
            Inks = [.. condition.Inks.Select(i => most.TryGetValue(i.Role, out double limit) ? i with { LimitPercent = limit } : i)],
        };
    }

    private static string Ascii(PrintCondition condition)
    {
        string name = new([.. condition.Name.Select(c => char.IsAscii(c) && !char.IsControl(c) ? c : '?')]);
        return condition.Invented && !name.Contains("invented", StringComparison.OrdinalIgnoreCase) ? name + " (invented)" : name;
    }
}
