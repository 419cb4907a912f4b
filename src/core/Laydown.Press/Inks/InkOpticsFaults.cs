using Laydown.Colour.Spectra;
using Laydown.Measures;

namespace Laydown.Press.Inks;

/// <summary>What in the optics of an ink set no ink can be: each fault names ink, band, what was found and what is wanted.</summary>
public static class InkOpticsFaults
{
    /// <summary>More than this no single laydown absorbs or scatters; values above point to a wrong unit.</summary>
    public const double Most = 100;

    /// <summary>Every fault, each with the path of its field.</summary>
    /// <param name="file">Name of the file for messages.</param>
    /// <param name="optics">The optics.</param>
    public static IReadOnlyList<InputFault> Of(string file, InkOptics optics) =>
        [.. Twice(file, optics), .. optics.Inks.Index().SelectMany(i => OfInk(file, Invariant($"/inks/{i.Index}"), i.Item))];

    private static IEnumerable<InputFault> Twice(string file, InkOptics optics) =>
        optics.Inks.Index().Where(i => optics.Inks.Take(i.Index).Any(earlier => earlier.Role == i.Item.Role))
            .Select(i => new InputFault(file, null, Invariant($"/inks/{i.Index}/role"), i.Item.Role.ToString(), "each role once"));

    private static IEnumerable<InputFault> OfInk(string file, string path, InkLight ink) =>
        [
            .. Spectrum(file, path + "/absorption", ink.Role, "K·X", ink.Absorption, mayBeNone: true),
            .. Spectrum(file, path + "/scatter", ink.Role, "S·X", ink.Scatter, mayBeNone: ink.Role != InkRole.White),
            .. Curve(file, path + "/curve", ink),
        ];

    private static IEnumerable<InputFault> Spectrum(
        string file, string path, InkRole role, string symbol, IReadOnlyList<double> values, bool mayBeNone)
    {
        string name = InkRoleNames.Of(role);
        if (values.Count != Bands.Count)
        {
            yield return new(file, null, path, Invariant($"{name}: {values.Count} values of {symbol}"),
                Invariant($"{Bands.Count}, one every {Bands.StepNm} nm from {Bands.FirstNm} nm to {Bands.LastNm} nm"));
            yield break;
        }

        for (int band = 0; band < Bands.Count; band++)
        {
            bool taken = values[band] <= Most && (mayBeNone ? values[band] >= 0 : values[band] > 0);
            if (!taken)
                yield return new(file, null, Invariant($"{path}/{band}"), Invariant($"{name}, {Bands.Nm(band)} nm: {symbol} {values[band]}"),
                    Invariant($"{(mayBeNone ? "0" : "over 0")} to {Most}: ink neither gives light nor scatters less than nothing"));
        }
    }

    private static IEnumerable<InputFault> Curve(string file, string path, InkLight ink)
    {
        IReadOnlyList<double> curve = ink.Curve;
        bool rises = curve.Count >= 2 && curve[0] == 0 && curve[^1] == 100 && curve.Zip(curve.Skip(1)).All(p => p.Second >= p.First);
        if (!rises)
            yield return new(file, null, path,
                Invariant($"{InkRoleNames.Of(ink.Role)}: {curve.Count} values{(curve.Count > 0 ? Invariant($", {curve[0]} … {curve[^1]}") : "")}"),
                "at least two that rise from 0 to 100");
    }
}
