using Laydown.Colour.Fits;
using Laydown.Colour.Readings;
using Laydown.Measures;

namespace Laydown.Shop.Colour;

/// <summary>Fits a model to a file of readings; needs no shop and saves nothing.</summary>
/// <param name="files">Reads the file.</param>
public sealed class FitReadings(IColourFiles files)
{
    /// <summary>Reads, fits and tells the residuals.</summary>
    /// <param name="path">Full path of the readings.</param>
    /// <param name="choices">How to model.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    /// <param name="cancellation">Stops between steps.</param>
    public Task<Reading<FitOutcome>> FitAsync(
        string path, FitChoices choices, IProgress<double>? progress, CancellationToken cancellation) =>
        Task.Run(() => files.Readings(path).Then(readings => Fitted(Path.GetFileName(path), readings, choices, progress, cancellation)), cancellation);

    private static Reading<FitOutcome> Fitted(
        string file, ReadingSet readings, FitChoices choices, IProgress<double>? progress, CancellationToken cancellation) =>
        PrintFit.Fit(file, readings, choices, progress, cancellation)
            .Then(print => Reading.Of(new FitOutcome(readings, print, FitReport.Of(readings, print))));
}
