using Laydown.Colour.Fits;
using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Shop.Colour;

/// <summary>Measured against predicted; needs no shop.</summary>
/// <param name="files">Reads the file.</param>
public sealed class ScoreReadings(IColourFiles files)
{
    /// <summary>Compares readings with a model's predictions.</summary>
    /// <param name="print">The model.</param>
    /// <param name="path">Readings with the same inks.</param>
    public Reading<ReadingScore> Score(PrintModel print, string path) =>
        files.Readings(path).Then(readings => Score(print, Path.GetFileName(path), readings));

    /// <summary>The same for readings at hand.</summary>
    internal static Reading<ReadingScore> Score(PrintModel print, string file, ReadingSet readings)
    {
        int[] order = [.. print.InkNames.Select(n => readings.InkNames.ToList().FindIndex(r => string.Equals(r, n, StringComparison.OrdinalIgnoreCase)))];
        if (order.Contains(-1) || readings.InkNames.Count != order.Length)
        {
            return Reading.Refused<ReadingScore>(new InputFault(
                file, null, "inks", string.Join(", ", readings.InkNames), string.Join(", ", print.InkNames)));
        }

        PatchResidual[] patches = [.. readings.Patches.Select(p =>
        {
            double[] inks = [.. order.Select(at => p.Inks[at])];
            Lab predicted = print.Model.ToLab(inks);
            return new PatchResidual(p.Id, inks, p.Lab, predicted, Ciede2000.Between(p.Lab, predicted));
        }).OrderByDescending(p => p.DeltaE00)];
        return Reading.Of(new ReadingScore(readings.Name, print.InkNames, ResidualSummary.Of(patches.Select(p => p.DeltaE00)), patches));
    }
}
