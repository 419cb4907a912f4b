using System.CommandLine;
using Laydown.Cli.Colour;
using Laydown.Cli.Words;
using Laydown.Colour.Spaces;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Layers;

namespace Laydown.Cli.Layers;

/// <summary><c>laydown look FILE</c>: what is seen of mixtures on a stack, from an item or named on the command line.</summary>
internal static class LookCommand
{
    private const int FirstNm = 380, StepNm = 10;

    public static Command Make(Shared shared)
    {
        Argument<string> file = new("file") { Description = "CSV with a column for each ink of each layer, percent, such as \"1 Cyan\": layer from 1 in print order, then the ink." };
        Option<string?> item = new("--item") { Description = "Id of the item whose stack it is." };
        Option<string?> stock = new("--stock") { Description = "Id of a stock, where no item is named." };
        Option<string?> inks = new("--ink-set") { Description = "Id of an ink set, where no item is named." };
        Option<string?> layers = new("--layers") { Description = "Layers in print order, each face from the sheet outward: " + LayerWords.Form + "." };
        Option<string> viewed = new("--viewed") { Description = "The face toward the viewer: first or second.", DefaultValueFactory = _ => "first" };
        Option<string?> target = new("--out") { Description = "CSV file to write; whole or not at all." };
        LightOptions light = new();
        Command command = new("look", "What is seen of mixtures on a stack: spectra, XYZ, Lab, cd/m2, opacity, transmission, by day and with the lamp on.")
        {
            file, item, stock, inks, layers, viewed, target,
        };
        light.AddTo(command);
        command.SetAction((parsed, cancellation) =>
        {
            (LookScene? day, LookScene? night, string? fault) = light.Scenes(parsed);
            (AskedStack? asked, string? other) = Asked(parsed.GetValue(item), parsed.GetValue(stock), parsed.GetValue(inks), parsed.GetValue(layers), parsed.GetValue(viewed) ?? "");
            return (fault ?? other) is { } words
                ? Task.FromResult(shared.Answer(parsed).Fail(ExitCodes.BadUsage, words, []))
                : shared.InShopAsync(
                    parsed,
                    (shop, answer) => TellAsync(
                        shop, answer, Path.GetFullPath(parsed.GetRequiredValue(file)), parsed.GetValue(item), asked, day, night, parsed.GetValue(target), cancellation),
                    cancellation);
        });
        return command;
    }

    private static (AskedStack? Stack, string? Fault) Asked(string? item, string? stock, string? inks, string? layers, string viewed)
    {
        if (LayerWords.Face(viewed) is not { } face)
            return (null, Invariant($"--viewed: found '{viewed}'; wanted first or second."));
        bool named = stock is not null || inks is not null || layers is not null;
        if (item is not null)
            return named ? (null, "Found --item beside a stack of its own; wanted one of them.") : (null, null);
        if (stock is null || inks is null || layers is null)
            return (null, "Found no stack; wanted --item ID, or --stock, --ink-set and --layers.");
        return LayerWords.Read(layers) is { } read
            ? (new(stock, inks, read, face), null)
            : (null, Invariant($"--layers: found '{layers}'; wanted {LayerWords.Form}."));
    }

    private static async Task<int> TellAsync(
        ShopServices shop, Answer answer, string file, string? item, AskedStack? asked, LookScene? day, LookScene? night, string? target,
        CancellationToken cancellation)
    {
        Reading<SpotLooks> looks = await shop.Layers.ComputeLook.ComputeAsync(file, item, asked, day, night, cancellation);
        if (!looks.IsTaken)
            return answer.Fail(ExitCodes.Refused, "There is no look to tell; nothing was written.", looks.Faults);
        byte[] csv = ColourFile.Csv(Names(looks.Value), looks.Value.Spots.Select(Row));
        if (target is not null && await NumbersCommands.WriteAsync(answer, target, csv, cancellation) is { } code)
            return code;
        if (answer.AsJson)
        {
            answer.Json("look", looks.Value);
            return ExitCodes.Done;
        }

        foreach (Finding finding in looks.Value.Findings)
            await answer.Error.WriteLineAsync(finding.What);
        if (target is null)
            answer.Out.Write(System.Text.Encoding.UTF8.GetString(csv));
        return ExitCodes.Done;
    }

    private static IReadOnlyList<string> Names(SpotLooks looks) =>
    [
        "id", .. looks.Columns,
        "day X", "day Y", "day Z", "day L", "day a", "day b", "day cd/m2", "night X", "night Y", "night Z", "night L", "night a", "night b", "night cd/m2",
        "opacity", "transmission %", "relative transmission %", "density", "contrast in room", "contrast in dark", "show-through dE00",
        .. looks.Spots.Count == 0 ? [] : Bands("R", looks.Spots[0].Reflectance.Count), .. looks.Spots.Count == 0 ? [] : Bands("T", looks.Spots[0].Transmittance.Count),
    ];

    private static IEnumerable<string> Bands(string what, int count) => Enumerable.Range(0, count).Select(b => Invariant($"{what}{FirstNm + (StepNm * b)}"));

    private static IReadOnlyList<string> Row(SpotLook spot) =>
    [
        spot.Name, .. spot.Coverages.Select(c => Invariant($"{c * 100:0.####}")),
        .. Light(spot.DayCdPerM2, spot.DayLab), .. Light(spot.NightCdPerM2, spot.NightLab),
        .. new[]
        {
            spot.Numbers.ContrastRatio, spot.Numbers.TransmissionPercent, spot.Numbers.RelativeTransmissionPercent, spot.Numbers.Density,
            spot.Numbers.ContrastInRoom, spot.Numbers.ContrastInDark, spot.Numbers.ShowThrough,
        }.Select(v => Invariant($"{v:0.0000}")),
        .. spot.Reflectance.Concat(spot.Transmittance).Select(v => Invariant($"{v:0.000000}")),
    ];

    private static IEnumerable<string> Light(Xyz light, Lab lab) =>
        new[] { light.X, light.Y, light.Z, lab.L, lab.A, lab.B, light.Y }.Select(v => Invariant($"{v:0.0000}"));
}
