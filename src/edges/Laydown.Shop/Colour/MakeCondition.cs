using Laydown.Colour.Inks;
using Laydown.Colour.Inversion;
using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;

namespace Laydown.Shop.Colour;

/// <summary>Makes the profile of a fitted print condition and puts it to use: whole or not at all.</summary>
/// <remarks>Files get names of their content; the condition's own file is replaced last. What runs already made rest on stays where it is.</remarks>
/// <param name="folder">The shop's folder.</param>
/// <param name="files">Reads and writes.</param>
public sealed class MakeCondition(ShopFolder folder, IColourFiles files)
{
    private const double LightestDark = 80;
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

        Made made = await Task.Run(
            () => Make(condition, print, limits.Value, wish, progress, cancellation), cancellation);
        await shelf.SaveProfilesAsync(path, Changed(condition, print, limits.Value, made), made.All, cancellation);
        return shelf.View(conditionId);
    }

    private static InputFault? GamutFault(PrintModel print, InkLimits limits)
    {
        InkInverse inverse = new(print.Model, limits, BlackPolicy.Usual, InkWishes.For(print.InkNames));
        double darkest = ProfileTableMaker.DarkestNeutral(inverse).L;
        return darkest <= LightestDark
            ? null
            : new("separation", null, "limits", Invariant($"a darkest neutral of L* {darkest:0.0}"), Invariant($"limits that let neutrals get as dark as L* {LightestDark}"));
    }

    // Pictures arrive as cyan, magenta, yellow and black of this print; the link carries them on to all its inks.
    private Made Make(PrintCondition condition, PrintModel print, InkLimits limits, MakeWish wish, IProgress<double>? progress, CancellationToken cancellation)
    {
        BlackPolicy policy = wish.Separation.Policy();
        int[] process = [.. Process.Select(n => print.InkNames.ToList().FindIndex(i => string.Equals(i, n, StringComparison.OrdinalIgnoreCase)))];
        bool all = process.Contains(-1), only = !all && print.InkNames.Count == Process.Length;
        int forward = print.InkNames.Count switch { <= 4 => 17, 5 => 9, 6 => 7, _ => 5 };
        ProfileTables tables = ProfileTableMaker.Make(
            print.Model, limits, policy, InkWishes.For(print.InkNames), forward, wish.Nodes, Part(progress, 0, only || all ? 1 : 0.4), cancellation);
        Made made = new() { Inks = Named(condition, "icc", files.Profile(tables, print.InkNames, limits, Ascii(condition))) };
        if (only || all)
            return made with { Pictures = only ? made.Inks : null };

        FixedInks four = new(print.Model, process);
        InkLimits some = new([.. process.Select(i => limits.PerInk[i])], Math.Max(limits.Total, process.Max(i => limits.PerInk[i])));
        ProfileTables pictures = ProfileTableMaker.Make(four, some, policy, InkWishes.FourInks, 17, wish.Nodes, Part(progress, 0.4, 0.7), cancellation);
        InkInverse inverse = ProfileTableMaker.InverseFor(print.Model, limits, policy, InkWishes.For(print.InkNames));
        LinkTables link = LinkChoice.Smallest(LinkMaker.FromCmyk(inverse, print.InkNames, four), Part(progress, 0.7, 1), cancellation).Table;
        return made with
        {
            Pictures = Named(condition, "cmyk.icc", files.Profile(pictures, [], some, Ascii(condition) + ", CMYK")),
            Link = Named(condition, "link.icc", files.Link(link, Ascii(condition))),
        };
    }

    private static PrintCondition Changed(PrintCondition condition, PrintModel print, InkLimits limits, Made made)
    {
        Dictionary<InkRole, double> most = print.InkNames.Index()
            .ToDictionary(n => InkRoleNames.Find(n.Item)!.Value, n => Math.Round(limits.PerInk[n.Index] * 100, 4));
        return condition with
        {
            Profile = made.Pictures?.Name ?? condition.Profile,
            InkProfile = made.Inks.Name,
            InkLink = made.Link?.Name,
            TotalLimitPercent = Math.Round(limits.Total * 100, 4),
            Inks = [.. condition.Inks.Select(i => most.TryGetValue(i.Role, out double limit) ? i with { LimitPercent = limit } : i)],
        };
    }

    private static ProfileFile Named(PrintCondition condition, string ending, byte[] bytes) =>
        new(Invariant($"{condition.Id}-{ConditionShelf.Mark(bytes)}.{ending}"), bytes);

    private static IProgress<double>? Part(IProgress<double>? progress, double from, double to) =>
        progress is null ? null : new Span(progress, from, to);

    private static string Ascii(PrintCondition condition)
    {
        string name = new([.. condition.Name.Select(c => char.IsAscii(c) && !char.IsControl(c) ? c : '?')]);
        return condition.Invented && !name.Contains("invented", StringComparison.OrdinalIgnoreCase) ? name + " (invented)" : name;
    }

    private sealed record ProfileFile(string Name, byte[] Bytes);

    private sealed record Made
    {
        internal required ProfileFile Inks { get; init; }

        internal ProfileFile? Pictures { get; init; }

        internal ProfileFile? Link { get; init; }

        internal IReadOnlyList<(string Name, byte[] Bytes)> All =>
            [.. new[] { Inks, Pictures, Link }.OfType<ProfileFile>().DistinctBy(f => f.Name).Select(f => (f.Name, f.Bytes))];
    }

    private sealed class Span(IProgress<double> whole, double from, double to) : IProgress<double>
    {
        public void Report(double value) => whole.Report(from + ((to - from) * value));
    }
}
