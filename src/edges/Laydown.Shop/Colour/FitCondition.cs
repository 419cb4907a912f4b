using Laydown.Colour.Fits;
using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;

namespace Laydown.Shop.Colour;

/// <summary>Fits the model of a print condition to readings of its chart and keeps both: whole or not at all.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="files">Reads and writes.</param>
/// <param name="clock">Tells the day.</param>
public sealed class FitCondition(ShopFolder folder, IColourFiles files, TimeProvider clock)
{
    /// <summary>Fits and saves; on any refusal or cancellation the condition stays as it was.</summary>
    /// <param name="conditionId">The print condition.</param>
    /// <param name="readingsPath">Full path of the readings.</param>
    /// <param name="choices">How to model.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    /// <param name="cancellation">Stops between steps.</param>
    public async Task<Reading<ConditionView>> FitAsync(
        string conditionId, string readingsPath, FitChoices choices, IProgress<double>? progress, CancellationToken cancellation)
    {
        ConditionShelf shelf = new(folder, files);
        Reading<(string Path, PrintCondition Condition)> found = shelf.Find(conditionId);
        if (!found.IsTaken)
            return Reading.Refused<ConditionView>(found.Faults);
        Reading<FitOutcome> fit = await new FitReadings(files).FitAsync(readingsPath, choices, progress, cancellation);
        if (!fit.IsTaken)
            return Reading.Refused<ConditionView>(fit.Faults);
        if (Strange(Path.GetFileName(readingsPath), fit.Value.Print, found.Value.Condition) is { } fault)
            return Reading.Refused<ConditionView>(fault);

        DateOnly day = DateOnly.FromDateTime(clock.GetLocalNow().Date);
        await shelf.SaveFitAsync(found.Value.Path, found.Value.Condition, fit.Value, day, cancellation);
        return shelf.View(conditionId);
    }

    private static InputFault? Strange(string file, FittedPrint print, PrintCondition condition)
    {
        string[] strange = [.. print.InkNames.Where(n => InkRoleNames.Find(n) is not { } role || condition.Inks.All(i => i.Role != role))];
        return strange.Length == 0
            ? null
            : new(file, null, "inks", string.Join(", ", strange), "inks of the print condition: " + string.Join(", ", condition.Inks.Select(i => InkRoleNames.Of(i.Role))));
    }
}
