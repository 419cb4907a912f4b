using Laydown.Colour.Calibration;
using Laydown.Colour.Readings;
using Laydown.Measures;

namespace Laydown.Shop.Colour;

/// <summary>Curves and limits of inks from wedges; needs no shop and saves nothing.</summary>
/// <param name="files">Reads the file.</param>
public sealed class CalibrateInks(IColourFiles files)
{
    /// <summary>Limit and curve of every ink that has a wedge, and the total limit where the chart has ladders of overprints.</summary>
    /// <param name="path">Full path of the readings.</param>
    /// <param name="aim">What steps are to be even in.</param>
    /// <param name="operatorPercent">The operator's own limit of one ink, percent; 100 for none.</param>
    /// <param name="largestCleanPatch">Id of the largest overprint without bleed; null where none was marked.</param>
    public Reading<InkCalibration> Calibrate(string path, LinearisationAim aim, double operatorPercent, string? largestCleanPatch) =>
        files.Readings(path).Then(set => Calibrate(Path.GetFileName(path), set, aim, operatorPercent, largestCleanPatch));

    private static Reading<InkCalibration> Calibrate(
        string file, ReadingSet set, LinearisationAim aim, double operatorPercent, string? largestCleanPatch)
    {
        Reading<IReadOnlyList<Wedge>> wedges = Wedges.From(set, file);
        if (!wedges.IsTaken)
            return Reading.Refused<InkCalibration>(wedges.Faults);
        List<InputFault> faults = [];
        List<CalibratedInk> inks = [];
        foreach (Wedge wedge in wedges.Value)
        {
            Reading<CalibratedInk> ink = InkLimitFinder.Find(wedge, operatorPercent, file).Then(limit =>
                Linearisation.Make(wedge, aim, limit.Limit.Value, file).Then(curve => Reading.Of(new CalibratedInk(wedge, limit, curve))));
            faults.AddRange(ink.Faults);
            if (ink.IsTaken)
                inks.Add(ink.Value);
        }

        // A chart without ladders simply says nothing of the total; a marked patch that is none is a mistake.
        Reading<FoundLimit> total = TotalLimitFinder.Find(set, largestCleanPatch, file);
        if (largestCleanPatch is not null)
            faults.AddRange(total.Faults);
        return faults.Count > 0
            ? Reading.Refused<InkCalibration>(faults)
            : Reading.Of(new InkCalibration(set.Name, inks, total.Match<FoundLimit?>(t => t, _ => null)));
    }
}
