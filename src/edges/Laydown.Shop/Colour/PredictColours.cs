using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Shop.Colour;

/// <summary>What mixtures of ink will look like; needs no shop.</summary>
/// <param name="files">Reads the files.</param>
public sealed class PredictColours(IColourFiles files)
{
    /// <summary>Colours of mixtures in a CSV file.</summary>
    /// <param name="print">The model.</param>
    /// <param name="path">CSV with a column for each ink, percent of one full ink; names may leave out blanks or be the ink's letter.</param>
    public Reading<IReadOnlyList<PredictedColour>> Predict(PrintModel print, string path) =>
        files.Numbers(path, [.. print.InkNames]).Then(table =>
        {
            List<PredictedColour> all = [];
            foreach (NumberRow row in table.Rows)
            {
                if (row.Values.Index().FirstOrDefault(v => v.Item is < 0 or > 100, (-1, 0)) is { Item1: >= 0 } wrong)
                {
                    return Reading.Refused<IReadOnlyList<PredictedColour>>(new InputFault(
                        table.File, null, Invariant($"line {row.Line}, {print.InkNames[wrong.Item1]}"), Invariant($"{row.Values[wrong.Item1]}"), "0 to 100 percent"));
                }

                double[] inks = [.. row.Values.Select(v => v / 100)];
                Lab lab = print.Model.ToLab(inks);
                all.Add(new(row.Name, inks, lab));
            }

            return Reading.Of<IReadOnlyList<PredictedColour>>(all);
        });
}
