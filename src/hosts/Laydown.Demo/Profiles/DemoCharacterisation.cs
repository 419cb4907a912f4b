using Laydown.Colour.Charts;
using Laydown.Colour.Fits;
using Laydown.Colour.Readings;
using Laydown.Formats.Json;
using Laydown.Intake.Colour;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Colour;

namespace Laydown.Demo.Profiles;

/// <summary>Characterises one print condition of the demo for real: invented readings, fitted and checked again by the product's own use cases.</summary>
internal static class DemoCharacterisation
{
    /// <summary>The print condition that rests on readings.</summary>
    internal const string ConditionId = "long-belt-boards";

    private const string ChartFile = "long-belt-boards-chart-invented.txt";
    private static readonly double[] Usual = [1, 1, 1, 1, 1, 1];
    private static readonly double[] Weaker = [1, 0.8, 1, 0.98, 1, 0.85];

    /// <summary>Writes readings, model, named colours and later readings below a shop's folder; the same bytes every time.</summary>
    /// <exception cref="OperationCanceledException">Cancelled; files that stand are whole.</exception>
    internal static void Write(string shopFolder, CancellationToken cancellation)
    {
        ShopFolder folder = new(shopFolder);
        ColourFiles files = new();
        DemoFiles.Write(folder.NamedColours, stream => LaydownJson.Write(stream, DemoColours.Library));
        string chart = Path.Combine(folder.Readings, ChartFile);
        byte[] readings = files.ReadingsText(DemoReadings.Of("long belt boards, invented", ChartKind.CharacteriseMedium, Usual, 1, 11));
        DemoFiles.Write(chart, stream => stream.Write(readings));
        Taken(new FitCondition(folder, files, new DemoClock(0))
            .FitAsync(ConditionId, chart, FitChoices.Usual with { Kind = FitKind.Regression }, null, cancellation).GetAwaiter().GetResult());

        (ReadingSet Set, int Days)[] later =
        [
            (DemoReadings.Of("strip of the week, invented", ChartKind.Verify, Usual, 1, 21), 2),
            (DemoReadings.Of("strip of the week, invented", ChartKind.Verify, Usual, 0.97, 22), 4),
            (DemoReadings.Of("strip after a new magenta lot, invented", ChartKind.Verify, Weaker, 0.97, 23), 6),
        ];
        foreach ((ReadingSet set, int days) in later)
        {
            Taken(new CheckDrift(folder, files, new DemoClock(days))
                .CheckAsync(ConditionId, Invariant($"strip-{days}.txt"), files.ReadingsText(set), cancellation).GetAwaiter().GetResult());
        }
    }

    private static void Taken<T>(Reading<T> reading)
    {
        if (!reading.IsTaken)
            throw new InvalidOperationException(string.Join("\n", reading.Faults));
    }
}
