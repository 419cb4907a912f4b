using Laydown.Colour.Calibration;
using Laydown.Colour.Readings;
using Laydown.Measures;
using Laydown.Press.Conditions;

namespace Laydown.Shop.Colour;

/// <summary>Compares a new reading with what a print condition promises, says what to do, and keeps the reading with its date.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="files">Reads and writes.</param>
/// <param name="clock">Tells the time.</param>
public sealed class CheckDrift(ShopFolder folder, IColourFiles files, TimeProvider clock)
{
    private const int WorstKept = 20;

    /// <summary>Compares and keeps; a refused reading is not kept.</summary>
    /// <param name="conditionId">The print condition; it must have been fitted.</param>
    /// <param name="name">Name of the file.</param>
    /// <param name="bytes">The readings, whatever their format.</param>
    /// <param name="cancellation">Stops before keeping.</param>
    public async Task<Reading<KeptReading>> CheckAsync(
        string conditionId, string name, ReadOnlyMemory<byte> bytes, CancellationToken cancellation)
    {
        ConditionShelf shelf = new(folder, files);
        Reading<(string Path, PrintCondition Condition, PrintModel Print)> found = shelf.Fitted(conditionId);
        if (!found.IsTaken)
            return Reading.Refused<KeptReading>(found.Faults);
        Reading<ReadingSet> now = files.Readings(name, bytes);
        if (!now.IsTaken)
            return Reading.Refused<KeptReading>(now.Faults);
        Reading<ReadingScore> score = ScoreReadings.Score(found.Value.Print, name, now.Value);
        if (!score.IsTaken)
            return Reading.Refused<KeptReading>(score.Faults);

        Characterisation against = found.Value.Condition.Characterisation!;
        Reading<DriftReport> drift = files.Readings(Path.Combine(shelf.FolderOf(conditionId, against), ConditionShelf.ReadingsFile))
            .Then(kept => DriftCheck.Compare(kept, now.Value, DriftLimits.Usual, name));
        DateTimeOffset taken = clock.GetLocalNow();
        KeptReading reading = new(
            Invariant($"{taken:yyyyMMdd-HHmmss}-{ConditionShelf.Mark(bytes.ToArray())}"), taken, now.Value.Name, against.Folder, score.Value.DeltaE00,
            drift.Match<DriftReport?>(d => d, _ => null), drift.Match(_ => "", f => f[0].ToString()), [.. score.Value.Patches.Take(WorstKept)]);
        await shelf.KeepAsync(conditionId, reading, files.ReadingsText(now.Value), cancellation);
        return Reading.Of(reading);
    }
}
