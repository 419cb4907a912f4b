using Laydown.Measures;

namespace Laydown.Layout.Hands;

/// <summary>One thing wrong with a layout: what, where, and by how much.</summary>
/// <param name="Kind">What.</param>
/// <param name="Severity">A stop keeps the layout from being saved; a warning is for the person to judge.</param>
/// <param name="Sheet">Which sheet, from 0; −1 where it concerns none.</param>
/// <param name="Spots">Spots concerned, from 0.</param>
/// <param name="Where">The place to look at, mm on the sheet.</param>
/// <param name="Found">Distance in mm, or copies.</param>
/// <param name="Wanted">Least distance in mm, or copies.</param>
/// <param name="PieceId">The piece concerned where copies are counted; else null.</param>
public sealed record LayoutConflict(
    ConflictKind Kind, Severity Severity, int Sheet, IReadOnlyList<int> Spots, RectMm Where, double Found, double Wanted, string? PieceId = null)
{
    /// <summary>The conflict in one sentence.</summary>
    /// <param name="names">Names of the pieces concerned, in the order of the spots; for copies the one piece's.</param>
    public string Words(params IReadOnlyList<string> names)
    {
        ArgumentNullException.ThrowIfNull(names);
        string one = names.Count > 0 ? names[0] : PieceId ?? "A piece", other = names.Count > 1 ? names[1] : "another";
        return Kind switch
        {
            ConflictKind.Overlap => Invariant($"{one} lies on {other}, {-Found:0.###} mm deep."),
            ConflictKind.Gap => Invariant($"{one} is {Found:0.###} mm from {other}; wanted at least {Wanted:0.###} mm."),
            ConflictKind.Margin => Invariant($"{one} is {Found:0.###} mm from the edge; wanted at least {Wanted:0.###} mm."),
            ConflictKind.OverEdge => Invariant($"{one} reaches {-Found:0.###} mm over the edge."),
            ConflictKind.KeepOut => Invariant($"{one} lies where the sheet is to stay bare."),
            ConflictKind.Turned => Invariant($"{one} lies turned; its flutes, grain or picture forbid that."),
            ConflictKind.Saw => Invariant($"No cut from edge to edge parts these {Spots.Count} pieces from each other: this sheet needs the router."),
            ConflictKind.Missing => Invariant($"{one}: {Found:0} of {Wanted:0} have no place."),
            _ => Invariant($"{one}: {Found:0} lie on sheets; wanted {Wanted:0}."),
        };
    }
}
