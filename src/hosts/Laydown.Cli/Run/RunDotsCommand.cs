using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Raster.Screens;
using Laydown.Shop;
using Laydown.Shop.Run;

namespace Laydown.Cli.Run;

/// <summary><c>laydown run dots ID</c>: the dots of a run at the resolution of the press.</summary>
internal static class RunDotsCommand
{
    public static Command Make(Shared shared)
    {
        Argument<string> id = new("id") { Description = "Id of the run, such as R-20261126-01." };
        Option<string> bits = new("--bits") { Description = "Bits of a dot: auto takes what the mode's drops need, 1 its largest drop alone, 2 up to three drops.", DefaultValueFactory = _ => "auto" };
        Option<string> compression = new("--compression") { Description = "How files are packed.", DefaultValueFactory = _ => "none" };
        Option<bool> resume = new("--resume") { Description = "Go on with a make that was broken off; bands that are there are read back and kept." };
        Option<string> screen = new("--screen")
        {
            Description = "How tones become dots: arrays gives each hue its own order of dots, intervals all dark inks one order without overlap, diffusion the finest detail for small text.",
            DefaultValueFactory = _ => "arrays",
        };
        bits.AcceptOnlyFromAmong("auto", "1", "2");
        compression.AcceptOnlyFromAmong("none", "packbits", "deflate");
        screen.AcceptOnlyFromAmong("arrays", "intervals", "diffusion");
        Command command = new("dots", "Makes the dots of every sheet, layer and ink beside the other files of a run.") { id, bits, compression, screen, resume };
        command.SetAction((parsed, cancellation) =>
        {
            DotsWish wish = new(
                parsed.GetValue(bits) switch { "1" => 1, "2" => 2, _ => null },
                parsed.GetValue(compression) switch { "packbits" => DotCompression.PackBits, "deflate" => DotCompression.Deflate, _ => DotCompression.None },
                parsed.GetValue(resume),
                parsed.GetValue(screen) switch { "intervals" => ScreenKind.Intervals, "diffusion" => ScreenKind.Diffusion, _ => ScreenKind.Arrays });
            return shared.InShopAsync(parsed, (shop, answer) => MakeAsync(shop, answer, parsed.GetRequiredValue(id), wish, cancellation), cancellation);
        });
        return command;
    }

    private static async Task<int> MakeAsync(ShopServices shop, Answer answer, string id, DotsWish wish, CancellationToken cancellation)
    {
        Reading<RunRecord> made = await Told.WhileAsync(answer, shop.Progress, _ => shop.MakeDots.MakeAsync(id, wish, cancellation), cancellation);
        if (!made.IsTaken)
        {
            return answer.Fail(
                Environments.CodeFor(made.Faults),
                Invariant($"Dots of run {id} could not be made; its folder is as it was. What was made of them waits for laydown run dots {id} --resume."),
                made.Faults);
        }

        List<ManifestEntry> dots = [.. made.Value.Files.Where(f => f.What == "dots")];
        string folder = Path.Combine(new ShopFolder(shop.Folder).Runs, made.Value.FolderName ?? id);
        if (answer.AsJson)
        {
            answer.Json("dots", new { folder, runId = id, ml = dots.Sum(d => d.Ml), bytes = dots.Sum(d => d.Bytes), files = dots });
            return ExitCodes.Done;
        }

        answer.Table(["file", "ink", "bits", "dpi", "ml", "bytes"], dots.Select(d => (IReadOnlyList<string>)
            [d.Name, d.Ink ?? "", Invariant($"{d.Bits}"), Invariant($"{d.DpiScan} × {d.DpiFeed}"), Invariant($"{d.Ml:0.000}"), Invariant($"{d.Bytes}")]));
        answer.Line(folder);
        return ExitCodes.Done;
    }
}
