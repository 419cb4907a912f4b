using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Colour;
using Laydown.Shop.Run;

namespace Laydown.Cli.Run;

/// <summary><c>laydown passes RUN</c> or <c>laydown passes --mode M</c>: scans, pictures of single passes, forecast of bands.</summary>
internal static class PassesCommand
{
    private const int Side = 256, PreviewWidth = 480, PreviewHeight = 480;

    private const double PreviewPixelsPerMm = 4;

    public static Command Make(Shared shared)
    {
        Options o = new();
        Command command = new("passes", "Which scan prints what, and how visible bands will be.")
        {
            o.Run, o.Press, o.Mode, o.Width, o.Length, o.Distance, o.Scans, o.Pass, o.Layer, o.Dots, o.Row, o.Column, o.Out, o.Preview, o.Times,
        };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed, (shop, answer) => RunAsync(shop, answer, o.Of(parsed), cancellation), cancellation));
        return command;
    }

    private static async Task<int> RunAsync(ShopServices shop, Answer answer, Asked asked, CancellationToken cancellation)
    {
        if (asked.Run is null == asked.Mode is null)
            return answer.Fail(ExitCodes.BadUsage, "laydown passes: wanted a run, or a mode with --mode.", []);
        if (asked.Problem is { } problem)
            return answer.Fail(ExitCodes.BadUsage, problem, []);
        ShowPasses passes = shop.Passes;
        Reading<PassesWish> wish = asked.Run is { } run
            ? await passes.WishOfAsync(run, cancellation)
            : passes.WishOf(asked.Press, asked.Mode!, new(asked.WidthMm, asked.LengthMm), asked.DistanceM ?? 1);
        if (wish.IsTaken && asked.DistanceM is { } distanceM)
            wish = Reading.Of(wish.Value with { DistanceM = distanceM });
        Reading<PassesView> view = wish.Then(w => passes.Show(w));
        if (!view.IsTaken)
            return answer.Fail(ExitCodes.Refused, "Passes cannot be shown.", view.Faults);
        Reading<IReadOnlyList<string>> written = await WriteAsync(shop, passes, wish.Value, view.Value, asked, cancellation);
        if (!written.IsTaken)
            return answer.Fail(Environments.CodeFor(written.Faults), "A picture could not be written.", written.Faults);
        Tell(answer, view.Value, asked, written.Value);
        return ExitCodes.Done;
    }

    private static void Tell(Answer answer, PassesView view, Asked asked, IReadOnlyList<string> written)
    {
        if (answer.AsJson)
            answer.Json("passes", new { view, scans = asked.Scans ? view.Faces.Select(f => f.Plan().Scans()) : null, written });
        else
            PassesWords.Show(answer, view, asked.Scans, written);
    }

    private static async Task<Reading<IReadOnlyList<string>>> WriteAsync(
        ShopServices shop, ShowPasses passes, PassesWish wish, PassesView view, Asked asked, CancellationToken cancellation)
    {
        List<string> written = [];
        if (asked.Preview is { } preview)
        {
            Reading<RgbPicture> drawn = passes.Preview(wish, asked.Times, PreviewWidth, PreviewHeight, PreviewPixelsPerMm);
            if (await PutAsync(shop, drawn, preview, written, cancellation) is { } faults)
                return Reading.Refused<IReadOnlyList<string>>(faults);
        }

        if (asked.Pass is { } pass)
        {
            string? folder = wish.Run?.FolderName is { } name ? Path.Combine(new ShopFolder(shop.Folder).Runs, name) : null;
            FacePasses face = view.Faces[0];
            Reading<RgbPicture> drawn = pass >= 0 && pass < face.Head.Passes && asked.Layer >= 1 && asked.Layer <= face.Layers && asked.Row < face.Rows
                ? passes.Pass(face.Plan(), asked.Layer - 1, pass, asked.Row, Side, asked.Dots is null ? null : folder, asked.Dots, asked.Column)
                : Reading.Refused<RgbPicture>(new InputFault("--pass", null, "pass", Invariant($"pass {pass} of layer {asked.Layer} from row {asked.Row}"),
                    Invariant($"a pass from 0 to {face.Head.Passes - 1}, a layer from 1 to {face.Layers}, a row under {face.Rows}")));
            if (await PutAsync(shop, drawn, asked.Out ?? Invariant($"pass-{pass}.png"), written, cancellation) is { } faults)
                return Reading.Refused<IReadOnlyList<string>>(faults);
        }

        return Reading.Of<IReadOnlyList<string>>(written);
    }

    private static async Task<IReadOnlyList<InputFault>?> PutAsync(
        ShopServices shop, Reading<RgbPicture> picture, string path, List<string> written, CancellationToken cancellation)
    {
        if (!picture.IsTaken)
            return picture.Faults;
        try
        {
            await File.WriteAllBytesAsync(path, shop.Pictures!.Png(picture.Value), cancellation);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [new InputFault(Path.GetFileName(path), null, "file", e.Message, "a place that can be written")];
        }

        written.Add(path);
        return null;
    }

    private sealed record Asked(
        string? Run, string? Press, string? Mode, double WidthMm, double LengthMm, double? DistanceM, bool Scans, int? Pass, int Layer, string? Dots, int Row,
        int Column, string? Out, string? Preview, double Times)
    {
        public string? Problem =>
            !(WidthMm is > 0 and <= 100_000) || !(LengthMm is > 0 and <= 100_000) ? "--width, --length: wanted over 0 to 100000 mm."
            : DistanceM is { } d && !(d is >= 0.05 and <= 10_000) ? "--distance: wanted 0.05 to 10000 m."
            : !(Times is >= 0 and <= 100) ? "--times: wanted 0 to 100."
            : Row < 0 || Column < 0 ? "--row, --column: wanted 0 or more."
            : null;
    }

    private sealed class Options
    {
        public Argument<string?> Run { get; } = new("run") { Description = "Id of the run; left out with --mode.", Arity = ArgumentArity.ZeroOrOne };

        public Option<string?> Press { get; } = new("--press") { Description = "Press of the mode; left out, the first that has it." };

        public Option<string?> Mode { get; } = new("--mode") { Description = "A mode instead of a run: one layer of colour." };

        public Option<double> Width { get; } = new("--width") { Description = "Sheet across the belt, mm.", DefaultValueFactory = _ => 1000 };

        public Option<double> Length { get; } = new("--length") { Description = "Sheet along the feed, mm.", DefaultValueFactory = _ => 1000 };

        public Option<double?> Distance { get; } = new("--distance") { Description = "Distance of the viewer, m; of a run that of its nearest viewer." };

        public Option<bool> Scans { get; } = new("--scans") { Description = "List every scan with direction, place of the belt, rows and nozzles." };

        public Option<int?> Pass { get; } = new("--pass") { Description = "Write the dots of that pass, from 0, as PNG." };

        public Option<int> Layer { get; } = new("--layer") { Description = "Layer of the pass, from 1.", DefaultValueFactory = _ => 1 };

        public Option<string?> Dots { get; } = new("--dots") { Description = "Dot file of the run folder; left out, every dot is asked for." };

        public Option<int> Row { get; } = new("--row") { Description = "First row of the picture of a pass.", DefaultValueFactory = _ => 0 };

        public Option<int> Column { get; } = new("--column") { Description = "First column of it.", DefaultValueFactory = _ => 0 };

        public Option<string?> Out { get; } = new("--out") { Description = "File for the picture of a pass." };

        public Option<string?> Preview { get; } = new("--preview") { Description = "Write the worst place with its bands as PNG." };

        public Option<double> Times { get; } = new("--times") { Description = "Show the error that many times larger.", DefaultValueFactory = _ => 1 };

        public Asked Of(ParseResult parsed) => new(
            parsed.GetValue(Run), parsed.GetValue(Press), parsed.GetValue(Mode), parsed.GetValue(Width), parsed.GetValue(Length), parsed.GetValue(Distance),
            parsed.GetValue(Scans), parsed.GetValue(Pass), parsed.GetValue(Layer), parsed.GetValue(Dots), parsed.GetValue(Row), parsed.GetValue(Column), parsed.GetValue(Out),
            parsed.GetValue(Preview), parsed.GetValue(Times));
    }
}
