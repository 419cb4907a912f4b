using System.CommandLine;
using Laydown.Colour.Charts;
using Laydown.Measures;
using Laydown.Shop.Colour;

namespace Laydown.Cli.Colour;

/// <summary><c>laydown chart make CONDITION</c>: a test chart as separations, PDF and reference file.</summary>
internal static class ChartCommand
{
    public static Command Make(Shared shared)
    {
        Argument<string> condition = new("condition") { Description = "Print condition whose inks and limits it is for." };
        Option<ChartKind> kind = new("--kind")
        {
            Description = "linearise, characteriseSmall, characteriseMedium, characteriseFull, verify, inkOptics.",
            DefaultValueFactory = _ => ChartKind.CharacteriseMedium,
        };
        Option<ReadingWay> way = new("--way") { Description = "How it is read: hand, strip.", DefaultValueFactory = _ => ReadingWay.Hand };
        Option<string?> stock = new("--stock") { Description = "Stock it is laid on; the first of the print condition when left out." };
        Option<int> seed = new("--seed") { Description = "Seed of filling and order.", DefaultValueFactory = _ => 1 };
        Command make = new("make", "Makes a chart for a print condition, laid on its stock: whole or not at all.") { condition, kind, way, stock, seed };
        make.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            (shop, answer) =>
            {
                Reading<MadeChart> made = shop.Colour.MakeChart.Make(
                    new(parsed.GetRequiredValue(condition), parsed.GetValue(stock), parsed.GetValue(kind), parsed.GetValue(way), parsed.GetValue(seed)), cancellation);
                if (!made.IsTaken)
                    return Task.FromResult(answer.Fail(ExitCodes.Refused, "No chart was made.", made.Faults));
                string place = Path.Combine(new Laydown.Shop.ShopFolder(shop.Folder).Charts, made.Value.Id);
                if (answer.AsJson)
                    answer.Json("chart", new { folder = place, chart = made.Value });
                else
                {
                    answer.Line(Invariant($"{made.Value.Patches} patches of {string.Join(", ", made.Value.Inks)} on {made.Value.Sheets} x {made.Value.Stock}"));
                    foreach (string file in made.Value.Files)
                        answer.Line(Path.Combine(place, file));
                }

                return Task.FromResult(ExitCodes.Done);
            },
            cancellation));
        return new Command("chart", "Test charts.") { make };
    }
}
