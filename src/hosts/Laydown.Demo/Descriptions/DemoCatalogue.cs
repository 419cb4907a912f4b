using Laydown.Formats.Json;
using Laydown.Press.Machines;

namespace Laydown.Demo.Descriptions;

/// <summary>Writes the demo shop's catalogue: two presses, two ink sets, its stocks, print conditions, rates and calendar, all invented and marked so.</summary>
public static class DemoCatalogue
{
    /// <summary>Names of the profiles that the print conditions ask for.</summary>
    public static IReadOnlyList<string> Profiles { get; } = ["hybrid-boards.icc", "hybrid-rolls.icc", "plain-boards.icc"];

    /// <summary>Writes the JSON files of the catalogue below <paramref name="folder"/>; profiles are written apart.</summary>
    /// <remarks>The same bytes every time; each file is written beside and renamed.</remarks>
    public static void Write(string folder, CancellationToken cancellation)
    {
        Put(folder, "shop.json", DemoShop.Describe());
        Put(folder, "calendar.json", DemoCalendar.Describe());
        foreach (PressDescription press in (PressDescription[])[DemoHybridPress.Describe(), DemoPlainPress.Describe()])
            Put(folder, Invariant($"presses/{press.Id}.json"), press);
        foreach (Press.Inks.InkSet set in (Press.Inks.InkSet[])[DemoInks.Eight(), DemoInks.Five()])
            Put(folder, Invariant($"inks/{set.Id}.json"), set);

        cancellation.ThrowIfCancellationRequested();
        foreach (Press.Stocks.Stock stock in DemoStocks.All())
            Put(folder, Invariant($"stocks/{stock.Id}.json"), stock);
        foreach (Press.Conditions.PrintCondition condition in DemoConditions.All())
            Put(folder, Invariant($"conditions/{condition.Id}.json"), condition);
    }

    private static void Put<T>(string folder, string name, T record)
        where T : notnull => DemoFiles.Write(Path.Combine(folder, name), stream => LaydownJson.Write(stream, record));
}
