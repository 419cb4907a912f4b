namespace Laydown.Optics.Fits;

/// <summary>What lies on the sheet at one patch, from the sheet outward: colours, white, colours; all on the face toward the instrument.</summary>
/// <param name="Under">Colours between sheet and white; seen through the white, or with a lamp behind.</param>
/// <param name="White">White, part of one full laydown, 0 to 1.</param>
/// <param name="Over">Colours on the white, or on the bare sheet where there is none.</param>
public sealed record OpticsBuild(IReadOnlyList<InkShare> Under, double White, IReadOnlyList<InkShare> Over)
{
    /// <summary>Name of the white in every table of readings.</summary>
    public const string WhiteName = "White";

    /// <summary>The bare sheet.</summary>
    public static OpticsBuild Bare { get; } = new([], 0, []);

    /// <summary>Names of all inks that lie there.</summary>
    public IEnumerable<string> Inks =>
        Under.Concat(Over).Select(i => i.Ink).Concat(White > 0 ? [WhiteName] : []).Distinct(StringComparer.Ordinal);

    /// <summary>In words, from the sheet outward, such as <c>White 60 %, Cyan 100 %</c>.</summary>
    public string Words()
    {
        string[] parts = [.. Under.Select(Said), .. White > 0 ? (string[])[Said(new(WhiteName, White))] : [], .. Over.Select(Said)];
        return parts.Length == 0 ? "bare sheet" : string.Join(", ", parts);
    }

    /// <summary>The same with other shares, such as what acts for what was asked.</summary>
    internal OpticsBuild With(Func<InkShare, double> share) => new(
        [.. Under.Select(i => i with { Share = share(i) })], White > 0 ? share(new(WhiteName, White)) : 0, [.. Over.Select(i => i with { Share = share(i) })]);

    private static string Said(InkShare ink) => Invariant($"{ink.Ink} {100 * ink.Share:0.#} %");
}
