using Laydown.Measures;

namespace Laydown.Press.Stacks;

/// <summary>What is done to the mask of a white, clear or block-out layer after its choke; by itself nothing.</summary>
/// <param name="FeatherMm">Width over which its edge fades, mm, −10 to 10: inside the edge where positive, outside where negative.</param>
/// <param name="MinFeatureMm">Least width, mm, −10 to 10: narrower ink is left out where positive, narrower gaps are filled where negative.</param>
/// <param name="StrengthCurve">Strength at even steps of the mask, percent from 0 to 100, never falling; at most 1000 steps; null for straight.</param>
/// <param name="KeepOutsMm">
/// Places that stay bare, mm from the lower left corner of the finished piece as its picture reads right; at most 1000; null for none.
/// </param>
public sealed record MaskShaping(
    double FeatherMm = 0, double MinFeatureMm = 0, IReadOnlyList<double>? StrengthCurve = null, IReadOnlyList<RectMm>? KeepOutsMm = null)
{
    /// <summary>Most millimetres of a feather and of a least width.</summary>
    public const double MostMm = 10;

    /// <summary>Most steps of a curve, and most places kept out.</summary>
    public const int MostEntries = 1000;

    /// <summary>Whether it changes nothing.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public bool IsNone => FeatherMm == 0 && MinFeatureMm == 0 && StrengthCurve is null && KeepOutsMm is null or { Count: 0 };

    /// <summary>What of it cannot be, each with what would do.</summary>
    /// <param name="group">What the layer is made of; colour takes none of it.</param>
    /// <param name="source">Where its mask comes from; a flood has no edge.</param>
    /// <returns>Name of the field as in files, what was found, what would have been taken.</returns>
    public IEnumerable<(string Field, string Found, string Wanted)> Faults(InkGroup group, WhiteSource? source)
    {
        bool edges = group != InkGroup.Colour && source is not (null or WhiteSource.Flood);
        string without = group == InkGroup.Colour ? "0, as colour has no mask" : "0, or a mask with edges: a flood has none";
        if (!(Math.Abs(FeatherMm) <= MostMm))
            yield return ("featherMm", Invariant($"{FeatherMm} mm"), Invariant($"-{MostMm} mm to {MostMm} mm"));
        else if (FeatherMm != 0 && !edges)
            yield return ("featherMm", Invariant($"{FeatherMm} mm"), without);
        if (!(Math.Abs(MinFeatureMm) <= MostMm))
            yield return ("minFeatureMm", Invariant($"{MinFeatureMm} mm"), Invariant($"-{MostMm} mm to {MostMm} mm"));
        else if (MinFeatureMm != 0 && !edges)
            yield return ("minFeatureMm", Invariant($"{MinFeatureMm} mm"), without);
        if (StrengthCurve is { } curve && (group == InkGroup.Colour || !Rises(curve)))
        {
            yield return ("strengthCurve", Invariant($"{curve.Count} steps, {string.Join(", ", curve.Take(5).Select(c => Invariant($"{c:0.##}")))}{(curve.Count > 5 ? " …" : "")}"),
                group == InkGroup.Colour ? "none, as colour has curves of its own" : Invariant($"2 to {MostEntries} steps from 0 to 100 that never fall"));
        }

        foreach ((string field, string found, string wanted) in PlaceFaults(group))
            yield return (field, found, wanted);
    }

    /// <summary>It in words, one for each thing done; none where it changes nothing.</summary>
    public IReadOnlyList<string> Words()
    {
        List<string> words = [];
        if (MinFeatureMm != 0)
            words.Add(MinFeatureMm > 0 ? Invariant($"no part under {MinFeatureMm:0.##} mm") : Invariant($"no gap under {-MinFeatureMm:0.##} mm"));
        if (FeatherMm != 0)
            words.Add(Invariant($"fades over {Math.Abs(FeatherMm):0.##} mm {(FeatherMm > 0 ? "inward" : "outward")}"));
        if (StrengthCurve is { } curve)
            words.Add(Invariant($"strength by a curve of {curve.Count} steps"));
        if (KeepOutsMm is { Count: > 0 } places)
            words.Add(Invariant($"{places.Count} {(places.Count == 1 ? "place" : "places")} kept out"));
        return words;
    }

    private IEnumerable<(string Field, string Found, string Wanted)> PlaceFaults(InkGroup group)
    {
        if (KeepOutsMm is not { Count: > 0 } places)
            yield break;
        if (group == InkGroup.Colour || places.Count > MostEntries)
            yield return ("keepOutsMm", Invariant($"{places.Count} places"), group == InkGroup.Colour ? "none for colour" : Invariant($"at most {MostEntries}"));
        foreach ((int i, RectMm place) in places.Index())
        {
            bool sound = double.IsFinite(place.XMm) && double.IsFinite(place.YMm)
                && place.WidthMm is > 0 and <= 1_000_000 && place.HeightMm is > 0 and <= 1_000_000;
            if (!sound)
                yield return (Invariant($"keepOutsMm/{i}"), Invariant($"{place.WidthMm} mm × {place.HeightMm} mm at {place.XMm}, {place.YMm}"), "a width and a height over 0 mm");
        }
    }

    private static bool Rises(IReadOnlyList<double> curve) =>
        curve.Count is >= 2 and <= MostEntries && curve[0] == 0 && curve[^1] == 100 && curve.Zip(curve.Skip(1)).All(p => p.Second >= p.First);
}
