using System.CommandLine;
using System.Globalization;
using Laydown.Cli.Colour;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Run;

namespace Laydown.Cli.Run;

/// <summary><c>laydown run look ID</c>: a part of a made sheet at the pixels of its files.</summary>
internal static class RunLookCommand
{
    private const int UsualPixels = 1000;

    public static Command Make(Shared shared)
    {
        Argument<string> id = new("id") { Description = "Id of the run, such as R-20261126-01." };
        Option<int> sheet = new("--sheet") { Description = "Sheet from 1.", DefaultValueFactory = _ => 1 };
        Option<int?> layer = new("--layer") { Description = "One layer alone, from 1 in print order." };
        Option<string?> ink = new("--ink") { Description = "One ink alone by its name, of --layer where two layers have it." };
        Option<bool> grey = new("--grey") { Description = "An ink alone as grey instead of in its colour." };
        Option<string> at = new("--at") { Description = "Left and upper edge, X,Y.", DefaultValueFactory = _ => "0,0" };
        Option<string?> size = new("--size") { Description = "Width and height, W,H; by itself 1000 pixels each way, as far as there is sheet." };
        Option<bool> mm = new("--mm") { Description = "Places are in millimetres from the left and upper edge of the sheet, not in pixels." };
        Option<bool> contone = new("--contone") { Description = "The contone, also where the run has dots." };
        Option<string?> png = new("--png") { Description = "PNG file to write; whole or not at all." };
        Command command = new("look", "Looks into a made sheet: a crop at the pixels or dots of its files, all layers, one layer or one ink, with what of every ink lies there.")
        {
            id, sheet, layer, ink, grey, at, size, mm, contone, png,
        };
        command.SetAction((parsed, cancellation) =>
        {
            (double X, double Y)? place = Pair(parsed.GetValue(at)), extent = Pair(parsed.GetValue(size));
            if (place is null || (extent is null && parsed.GetValue(size) is not null))
                return Task.FromResult(shared.Answer(parsed).Fail(ExitCodes.BadUsage, Invariant($"--at or --size: found '{parsed.GetValue(at)}', '{parsed.GetValue(size)}'; wanted two numbers, such as 120,80."), []));
            Wish wish = new(
                parsed.GetRequiredValue(id), parsed.GetValue(sheet), parsed.GetValue(layer), parsed.GetValue(ink), parsed.GetValue(grey), place.Value, extent,
                parsed.GetValue(mm), parsed.GetValue(contone) ? "contone" : null, parsed.GetValue(png));
            return shared.InShopAsync(parsed, (shop, answer) => LookAsync(shop, answer, wish, cancellation), cancellation);
        });
        return command;
    }

    private static async Task<int> LookAsync(ShopServices shop, Answer answer, Wish wish, CancellationToken cancellation)
    {
        Reading<OpenedSheet> opened = await shop.Sheets.Open.OpenAsync(wish.Id, wish.Sheet, wish.Files, cancellation);
        Reading<SheetSeen> seen = opened.Then(o => Seen(o.Sheet, wish));
        if (!seen.IsTaken)
            return answer.Fail(ExitCodes.Refused, Invariant($"Run {wish.Id} cannot be looked into."), seen.Faults);
        Reading<SheetCrop> crop = await shop.Sheets.Crop.CropAsync(opened.Value, seen.Value, Part(opened.Value.Sheet, wish), cancellation);
        if (!crop.IsTaken)
            return answer.Fail(ExitCodes.Refused, Invariant($"Run {wish.Id} cannot be looked into."), crop.Faults);
        if (wish.Png is { } path && await FaultOfAsync(path, crop.Value.Png, cancellation) is { } fault)
            return answer.Fail(ExitCodes.Refused, Invariant($"{Path.GetFileName(path)} was not written."), [fault]);
        if (answer.AsJson)
            answer.Json("crop", new { runId = wish.Id, sheet = wish.Sheet, png = wish.Png is null ? null : Path.GetFullPath(wish.Png), crop = crop.Value });
        else
            Show(answer, crop.Value);
        return ExitCodes.Done;
    }

    private static async Task<InputFault?> FaultOfAsync(string path, byte[] png, CancellationToken cancellation)
    {
        try
        {
            await ColourFile.WriteAsync(path, png, cancellation);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new(Path.GetFileName(path), null, "file", e.Message, "a file that can be written");
        }
    }

    private static void Show(Answer answer, SheetCrop crop)
    {
        answer.Line(Invariant($"{crop.Columns} × {crop.Rows} {(crop.IsDots ? "dots" : "pixels")} at {crop.Left}, {crop.Top}: {crop.LeftMm:0.00} mm from the left, {crop.TopMm:0.00} mm from the top"));
        answer.Line(crop.Pieces.Count == 0 ? "No piece lies there." : string.Join("; ", crop.Pieces));
        answer.Table(["layer", "ink", "%", "ml/m2", crop.IsDots ? "dots by drop" : "values"], crop.Inks.Select(i => (IReadOnlyList<string>)
        [
            Invariant($"{i.Layer}"), i.Ink, Invariant($"{i.Percent:0.00}"), Invariant($"{i.MlPerM2:0.00}"),
            i.Values.Count <= 4 ? string.Join(", ", i.Values.Select(v => Invariant($"{v.Value}: {v.Count}"))) : Invariant($"{i.Values.Count} of them, {i.Values[0].Value} to {i.Values[^1].Value}"),
        ]));
    }

    private static Reading<SheetSeen> Seen(PressSheet sheet, Wish wish)
    {
        if (wish.Layer is { } layer && (layer < 1 || layer > sheet.Layers))
            return Refused(sheet, "layer", Invariant($"{layer}"), Invariant($"1 to {sheet.Layers}"));
        if (wish.Ink is null)
            return Reading.Of(wish.Layer is { } one ? new SheetSeen(SheetSeenKind.Layer, one) : new(SheetSeenKind.All, 0));
        List<PressPlane> named = [.. sheet.Planes.Where(p => string.Equals(p.Name, wish.Ink, StringComparison.OrdinalIgnoreCase) && (wish.Layer is null || p.Layer == wish.Layer))];
        return named.Count == 1
            ? Reading.Of(new SheetSeen(wish.Grey ? SheetSeenKind.Ink : SheetSeenKind.Tint, named[0].Number))
            : Refused(
                sheet, "ink", named.Count == 0 ? Invariant($"'{wish.Ink}'") : Invariant($"'{wish.Ink}' in {named.Count} layers"),
                named.Count == 0 ? string.Join(", ", sheet.Planes.Select(p => p.Name).Distinct()) : "--layer beside it");
    }

    private static PressPart Part(PressSheet sheet, Wish wish)
    {
        (double across, double down) = wish.Mm ? (sheet.MmPerPx, sheet.MmPerPxDown) : (1, 1);
        int Of(double value, double per) => (int)Math.Clamp(Math.Round(value / per), int.MinValue / 4, int.MaxValue / 4);
        (int left, int top) = (Of(wish.At.X, across), Of(wish.At.Y, down));
        return wish.Size is { } size
            ? new(0, left, top, Of(size.X, across), Of(size.Y, down))
            : new(0, left, top, Math.Min(UsualPixels, sheet.WidthPx - left), Math.Min(UsualPixels, sheet.HeightPx - top));
    }

    private static (double X, double Y)? Pair(string? words) =>
        words?.Split(',') is [var x, var y] && double.TryParse(x, NumberStyles.Float, CultureInfo.InvariantCulture, out double one)
            && double.TryParse(y, NumberStyles.Float, CultureInfo.InvariantCulture, out double other) && double.IsFinite(one) && double.IsFinite(other)
            ? (one, other)
            : null;

    private static Reading<SheetSeen> Refused(PressSheet sheet, string field, string found, string wanted) =>
        Reading.Refused<SheetSeen>(new InputFault(Invariant($"run {sheet.RunId}, sheet {sheet.Number}"), null, field, found, wanted));

    private sealed record Wish(
        string Id, int Sheet, int? Layer, string? Ink, bool Grey, (double X, double Y) At, (double X, double Y)? Size, bool Mm, string? Files, string? Png);
}
