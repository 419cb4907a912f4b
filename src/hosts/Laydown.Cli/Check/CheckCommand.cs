using System.CommandLine;
using Laydown.Artwork.Checks;
using Laydown.Artwork.Pages;
using Laydown.Cli.Words;
using Laydown.Measures;

namespace Laydown.Cli.Check;

/// <summary><c>laydown check FILE</c>: measures and checks one file; needs no shop.</summary>
internal static class CheckCommand
{
    public static Command Make(Shared shared)
    {
        Options options = new();
        Command command = new("check", "Measures one artwork file and checks it against size, distance and mode.");
        command.Arguments.Add(options.File);
        Option[] all =
        [
            options.Width, options.Height, options.Bleed, options.Scale, options.Distance, options.Dpi, options.Ppi, options.InkLimit,
            options.White, options.WhiteSeparation, options.WhiteFromAlpha, options.DayNight, options.Contour,
        ];
        foreach (Option option in all)
            command.Options.Add(option);
        command.SetAction((parsed, cancellation) => CheckAsync(parsed, shared.Answer(parsed), options, cancellation));
        return command;
    }

    private static async Task<int> CheckAsync(ParseResult parsed, Answer answer, Options options, CancellationToken cancellation)
    {
        await Task.Yield();
        string path = Path.GetFullPath(parsed.GetRequiredValue(options.File));
        if (!File.Exists(path))
            return answer.Fail(ExitCodes.Refused, Invariant($"{path}: found no such file; wanted a PDF, TIFF, PNG, JPEG or SVG."), []);
        if (options.Fault(parsed) is { } fault)
            return answer.Fail(ExitCodes.BadUsage, fault, []);

        using ScratchOfCommand scratch = new();
        Reading<ArtworkFile> reading = await Wiring.ArtworkReader(scratch.FullPath).ReadAsync(path, cancellation);
        if (!reading.IsTaken)
            return answer.Fail(Environments.CodeFor(reading.Faults), Invariant($"{Path.GetFileName(path)} cannot be taken."), reading.Faults);

        IReadOnlyList<Finding> findings = ArtworkChecks.Run(reading.Value, options.Wish(parsed, reading.Value));
        if (answer.AsJson)
            answer.Json("check", new { file = path, artwork = reading.Value, findings });
        else
            Say(answer, reading.Value, findings);
        return findings.Any(f => f.Severity == Severity.Stop) ? ExitCodes.Held : ExitCodes.Done;
    }

    private static void Say(Answer answer, ArtworkFile file, IReadOnlyList<Finding> findings)
    {
        answer.Line(Invariant($"{file.Name}  {file.Kind} {file.Version}  {file.Bytes} bytes, {file.Pages.Count} pages"));
        foreach (ArtworkPage page in file.Pages)
            answer.Line(Invariant($"page {page.Number}  {page.MediaMm}  trim {page.TrimMm.Size}  {string.Join(", ", page.ColourSpaces)}"));
        answer.Table(["", "check", "page", "what", "measured", "wanted", "repair"], findings.Select(f => (IReadOnlyList<string>)
        [
            f.Severity switch { Severity.Stop => "stop", Severity.Warn => "warn", _ => "note" },
            f.Code, f.Page is null ? "" : Invariant($"{f.Page}"), f.What, f.Measured, f.Wanted, f.Repair ?? "",
        ]));
        answer.Line(Invariant($"{findings.Count(f => f.Severity == Severity.Stop)} stop, {findings.Count(f => f.Severity == Severity.Warn)} warn, {findings.Count(f => f.Severity == Severity.Note)} note"));
    }

    private sealed class Options
    {
        public Argument<string> File { get; } = new("file") { Description = "The artwork file." };

        public Option<double?> Width { get; } = new("--width") { Description = "Finished width, mm (default: as the file says)." };

        public Option<double?> Height { get; } = new("--height") { Description = "Finished height, mm (default: as the file says)." };

        public Option<double> Bleed { get; } = new("--bleed") { Description = "Bleed wanted on each side, mm.", DefaultValueFactory = _ => 0 };

        public Option<int> Scale { get; } = new("--scale") { Description = "Scale the file is drawn at: 1, or 10 for 1:10.", DefaultValueFactory = _ => 1 };

        public Option<double> Distance { get; } = new("--distance") { Description = "Viewing distance, m.", DefaultValueFactory = _ => 1 };

        public Option<int> Dpi { get; } = new("--dpi") { Description = "Dots per inch of the press.", DefaultValueFactory = _ => 600 };

        public Option<int> Ppi { get; } = new("--ppi") { Description = "Resolution of the press files, ppi.", DefaultValueFactory = _ => 150 };

        public Option<double> InkLimit { get; } = new("--ink-limit") { Description = "Largest sum of inks, percent.", DefaultValueFactory = _ => 300 };

        public Option<bool> White { get; } = new("--white") { Description = "White is printed." };

        public Option<string?> WhiteSeparation { get; } = new("--white-separation") { Description = "White is taken from this separation." };

        public Option<bool> WhiteFromAlpha { get; } = new("--white-from-alpha") { Description = "White is taken from the file's alpha." };

        public Option<bool> DayNight { get; } = new("--day-night") { Description = "Page 2 is the picture seen when lit." };

        public Option<bool> Contour { get; } = new("--contour") { Description = "Cut along a contour of the file." };

        /// <summary>What is wrong with the numbers given, or null.</summary>
        public string? Fault(ParseResult parsed)
        {
            (string Name, double Value, double Least, double Most)[] ranges =
            [
                ("--width", parsed.GetValue(Width) ?? 1, 0.1, 1e6), ("--height", parsed.GetValue(Height) ?? 1, 0.1, 1e6),
                ("--bleed", parsed.GetValue(Bleed), 0, 1000), ("--scale", parsed.GetValue(Scale), 1, 1000),
                ("--distance", parsed.GetValue(Distance), 0.05, 10_000), ("--dpi", parsed.GetValue(Dpi), 1, 100_000),
                ("--ppi", parsed.GetValue(Ppi), 1, 100_000), ("--ink-limit", parsed.GetValue(InkLimit), 1, 10_000),
            ];
            (string Name, double Value, double Least, double Most) wrong = ranges.FirstOrDefault(r => !(r.Value >= r.Least && r.Value <= r.Most));
            return wrong.Name is null ? null : Invariant($"{wrong.Name}: found {wrong.Value}; wanted {wrong.Least} to {wrong.Most}.");
        }

        public CheckWish Wish(ParseResult parsed, ArtworkFile file)
        {
            int scale = parsed.GetValue(Scale);
            SizeMm drawn = file.Pages[0].TrimMm.Size;
            string? separation = parsed.GetValue(WhiteSeparation);
            bool alpha = parsed.GetValue(WhiteFromAlpha);
            return new(
                new(parsed.GetValue(Width) ?? Math.Max(0.1, drawn.WidthMm * scale), parsed.GetValue(Height) ?? Math.Max(0.1, drawn.HeightMm * scale)),
                parsed.GetValue(Bleed), scale, parsed.GetValue(Distance), parsed.GetValue(Dpi), parsed.GetValue(Dpi), parsed.GetValue(Ppi),
                parsed.GetValue(InkLimit), parsed.GetValue(White) || separation is not null || alpha, separation, alpha,
                parsed.GetValue(DayNight), parsed.GetValue(Contour));
        }
    }
}
