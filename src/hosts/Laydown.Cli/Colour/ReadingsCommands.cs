using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Colour.Calibration;
using Laydown.Measures;
using Laydown.Shop.Colour;

namespace Laydown.Cli.Colour;

/// <summary>Verbs that look at readings: <c>readings take</c>, <c>condition calibrate</c>, <c>condition drift</c>.</summary>
internal static class ReadingsCommands
{
    public static Command Make(Shared shared)
    {
        ColourOptions options = new();
        Command take = new("take", "Takes a file of readings into the shop: CGATS.17 text, CxF3 or CSV; repeats averaged, outliers named.") { options.File };
        take.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            (shop, answer) => WithBytesAsync(answer, parsed.GetRequiredValue(options.File), async (name, bytes) =>
            {
                Reading<TakenReadings> taken = await shop.Colour.TakeReadings.TakeAsync(name, bytes, cancellation);
                return taken.IsTaken ? Tell(answer, taken.Value) : answer.Fail(ExitCodes.Refused, Invariant($"{name} cannot be taken; nothing was kept."), taken.Faults);
            }),
            cancellation));
        return new Command("readings", "Readings of charts.") { take };
    }

    public static Command Calibrate(Shared shared)
    {
        ColourOptions options = new();
        Command command = new("calibrate", "Limit and curve of every ink from the wedges of a chart; needs no shop.")
        {
            options.File, options.Aim, options.Most, options.Clean,
        };
        command.SetAction(async (parsed, _) =>
        {
            await Task.Yield();
            Answer answer = shared.Answer(parsed);
            string path = Path.GetFullPath(parsed.GetRequiredValue(options.File));
            Reading<InkCalibration> found = new CalibrateInks(Wiring.ColourFiles()).Calibrate(
                path, parsed.GetValue(options.Aim), parsed.GetValue(options.Most), parsed.GetValue(options.Clean));
            if (!found.IsTaken)
                return answer.Fail(ExitCodes.Refused, Invariant($"{Path.GetFileName(path)} gives no curves."), found.Faults);
            if (answer.AsJson)
                answer.Json("calibration", found.Value);
            else
                Tell(answer, found.Value);
            return ExitCodes.Done;
        });
        return command;
    }

    public static Command Drift(Shared shared)
    {
        ColourOptions options = new();
        Argument<string> id = new("id") { Description = "Id of a fitted print condition." };
        Command command = new("drift", "A new reading against a print condition: verdict, and the reading is kept with its date.") { id, options.File };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            (shop, answer) => WithBytesAsync(answer, parsed.GetRequiredValue(options.File), async (name, bytes) =>
            {
                Reading<KeptReading> kept = await shop.Colour.CheckDrift.CheckAsync(parsed.GetRequiredValue(id), name, bytes, cancellation);
                if (!kept.IsTaken)
                    return answer.Fail(ExitCodes.Refused, Invariant($"{name} cannot be compared; nothing was kept."), kept.Faults);
                if (answer.AsJson)
                {
                    answer.Json("drift", kept.Value);
                    return ExitCodes.Done;
                }

                answer.Line(Invariant($"against prediction: mean {kept.Value.Predicted.Mean:0.00}, p95 {kept.Value.Predicted.P95:0.00}, max {kept.Value.Predicted.Max:0.00} dE00"));
                answer.Line(Verdict(kept.Value));
                foreach (string reason in kept.Value.Drift?.Reasons ?? [])
                    answer.Line("  " + reason);
                return ExitCodes.Done;
            }),
            cancellation));
        return command;
    }

    /// <summary>What a reading asks for, in words.</summary>
    public static string Verdict(KeptReading reading) => reading.Drift?.Verdict switch
    {
        DriftVerdict.Use => "use it as it is",
        DriftVerdict.Relinearise => "make new curves",
        DriftVerdict.Recharacterise => "print and read the whole chart again",
        _ => "no verdict: " + reading.DriftMissing,
    };

    private static async Task<int> WithBytesAsync(Answer answer, string file, Func<string, byte[], Task<int>> work)
    {
        string path = Path.GetFullPath(file);
        if (!File.Exists(path))
            return answer.Fail(ExitCodes.Refused, Invariant($"{path}: found no such file; wanted readings of a chart."), []);
        return await work(Path.GetFileName(path), await File.ReadAllBytesAsync(path));
    }

    private static int Tell(Answer answer, TakenReadings taken)
    {
        if (answer.AsJson)
        {
            answer.Json("readings", new
            {
                taken.FileName,
                taken.Readings.Name,
                taken.Readings.InkNames,
                taken.Readings.Measured,
                readings = taken.Readings.Patches.Count,
                patches = taken.Averaged.Set.Patches.Count,
                spectral = taken.Readings.IsSpectral,
                taken.Readings.Notes,
                taken.Averaged.Findings,
            });
            return ExitCodes.Done;
        }

        answer.Line(Invariant($"{taken.Readings.Name}: {taken.Readings.Patches.Count} readings of {taken.Averaged.Set.Patches.Count} patches, {string.Join(", ", taken.Readings.InkNames)}"));
        foreach (string note in taken.Readings.Notes)
            answer.Line("  " + note);
        foreach (Finding finding in taken.Averaged.Findings)
            answer.Line(Invariant($"  {finding.What} ({finding.Measured})"));
        return ExitCodes.Done;
    }

    private static void Tell(Answer answer, InkCalibration found)
    {
        answer.Line(found.Readings);
        answer.Table(["ink", "limit", "why", "curve"], found.Inks.Select(i => (IReadOnlyList<string>)
        [
            i.Wedge.Ink, Invariant($"{i.Limit.Limit.Value:0.#} %"), i.Limit.Limit.Because,
            string.Join(' ', i.Curve.Curve.Where((_, at) => at % 4 == 0).Select(v => Invariant($"{v:0.0}"))),
        ]));
        if (found.Total is { } total)
            answer.Line(Invariant($"all inks together {total.Limit.Value:0.#} %: {total.Limit.Because}"));
    }
}
