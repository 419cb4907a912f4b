using Laydown.Measures;

namespace Laydown.Shop.Colour;

/// <summary>What mixtures of ink will look like; needs no shop.</summary>
/// <param name="files">Reads the files.</param>
public sealed class PredictColours(IColourFiles files)
{
    /// <summary>Colours of mixtures in a CSV file.</summary>
    /// <param name="print">The model.</param>
    /// <param name="path">CSV with a column for each ink, percent of one full ink; names may leave out blanks or be the ink's letter.</param>
    public Reading<IReadOnlyList<PredictedColour>> Predict(PrintModel print, string path) => files.Numbers(path, [.. print.InkNames])
        .Then(table => Predict(print, table.File, [.. table.Rows.Select(r => r with { Values = [.. r.Values.Select(v => v / 100)] })]));

    /// <summary>Colours of mixtures at hand.</summary>
    /// <param name="print">The model.</param>
    /// <param name="rows">Inks in the model's order, parts of one full ink.</param>
    public static Reading<IReadOnlyList<PredictedColour>> Predict(PrintModel print, IReadOnlyList<IReadOnlyList<double>> rows) =>
        Predict(print, "list", [.. rows.Select((r, i) => new NumberRow(i + 1, "", r ?? []))]);

    private static Reading<IReadOnlyList<PredictedColour>> Predict(PrintModel print, string file, IReadOnlyList<NumberRow> rows)
    {
        List<PredictedColour> all = [];
        foreach (NumberRow row in rows)
        {
            if (row.Values.Count != print.InkNames.Count)
                return Refused(file, Invariant($"line {row.Line}"), Invariant($"{row.Values.Count} values"), "one for each of " + string.Join(", ", print.InkNames));
            for (int ink = 0; ink < row.Values.Count; ink++)
            {
                if (!(row.Values[ink] is >= 0 and <= 1))
                    return Refused(file, Invariant($"line {row.Line}, {print.InkNames[ink]}"), Invariant($"{row.Values[ink] * 100} %"), "0 % to 100 %");
            }

            all.Add(new(row.Name, row.Values, print.Model.ToLab([.. row.Values])));
        }

        return Reading.Of<IReadOnlyList<PredictedColour>>(all);
    }

    private static Reading<IReadOnlyList<PredictedColour>> Refused(string file, string field, string found, string wanted) =>
        Reading.Refused<IReadOnlyList<PredictedColour>>(new InputFault(file, null, field, found, wanted));
}
