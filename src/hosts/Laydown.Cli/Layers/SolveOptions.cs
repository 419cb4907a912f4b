using System.CommandLine;
using System.Globalization;
using Laydown.Shop.Layers;

namespace Laydown.Cli.Layers;

/// <summary>What <c>laydown panel solve</c> can be told.</summary>
internal sealed class SolveOptions
{
    private const string PointForm = "NX,NY=DX,DY with % or mm at its end, such as 12.5,40=14,41.5%";

    public Argument<string?> Item { get; } = new("item") { Description = "Id of the item; left out for two files outside any order.", Arity = ArgumentArity.ZeroOrOne };

    public Option<string?> Day { get; } = new("--day") { Description = "File of the day picture; page 1 of the item's artwork when left out." };

    public Option<string?> Night { get; } = new("--night") { Description = "File of the night picture; page 2 of the item's artwork when left out." };

    public Option<string?> Stock { get; } = new("--stock") { Description = "Id of a stock, where no item is named." };

    public Option<string?> Condition { get; } = new("--condition") { Description = "Id of a print condition; for an item the one it would be printed in when left out." };

    public Option<double> Width { get; } = new("--width") { Description = "Finished width, mm, where no item is named." };

    public Option<double> Height { get; } = new("--height") { Description = "Finished height, mm, where no item is named." };

    public Option<double> Bleed { get; } = new("--bleed") { Description = "Bleed on each side, mm, where no item is named.", DefaultValueFactory = _ => 0 };

    public Option<bool> FromPrint { get; } = new("--printed-side") { Description = "Looked at from the printed side instead of through the sheet, where no item is named." };

    public Option<double> WhitePercent { get; } = new("--white-percent") { Description = "Strength of the white, percent, over 0 to 200, where no item is named.", DefaultValueFactory = _ => 100 };

    public Option<string?> Out { get; } = new("--out") { Description = "Folder of the look, where no item is named; whole or absent." };

    public Option<double> Ppi { get; } = new("--ppi") { Description = "Resolution, 10 to 600 ppi.", DefaultValueFactory = _ => 150 };

    public Option<double> Weight { get; } = new("--weight") { Description = "Weight of the night picture: 0.1 day first, 1 balanced, 10 night first; 0.01 to 100.", DefaultValueFactory = _ => 1 };

    public Option<WhiteChoice> White { get; } = new("--white") { Description = "Strength of the white: fixed, stepped, free.", DefaultValueFactory = _ => WhiteChoice.Fixed };

    public Option<string?> Strengths { get; } = new("--strengths") { Description = "Strengths of the white, shares of full laydown: one if fixed, the steps if stepped, least and most if free, such as 0.4,1." };

    public Option<double?> Lift { get; } = new("--lift") { Description = "L* that day black becomes, 0 to 60; chosen when left out." };

    public Option<double?> Exposure { get; } = new("--exposure") { Description = "White of the night picture over the light of the bare panel, 0.02 to 1; chosen when left out." };

    public Option<bool> Flat { get; } = new("--flat") { Description = "Each pixel by itself: local contrast is not kept where a picture cannot be reached." };

    public Option<double> Distance { get; } = new("--distance") { Description = "From how far it is looked at, m, 0.2 to 100.", DefaultValueFactory = _ => 2 };

    public Option<PairPlacing> DayPlacing { get; } = new("--day-placing") { Description = "How the day picture is laid on the piece: careful, fit, crop, stretch." };

    public Option<PairPlacing> NightPlacing { get; } = new("--night-placing") { Description = "The same for the night picture." };

    public Option<string[]> Points { get; } = new("--point")
    {
        Description = "A place named in both pictures, from the upper left corner: " + PointForm + "; two move, turn and scale the night picture, three shear it as well.",
        Arity = ArgumentArity.ZeroOrMore,
    };

    public Option<int> DayPage { get; } = new("--day-page") { Description = "Page of the day picture's PDF.", DefaultValueFactory = _ => 1 };

    public Option<int?> NightPage { get; } = new("--night-page") { Description = "Page of the night picture's PDF; 2 for an item's own artwork, else 1." };

    public Option<int?> DayFrame { get; } = new("--day-frame", "--frame") { Description = "Frame or image of a day file that holds several." };

    public Option<int?> NightFrame { get; } = new("--night-frame") { Description = "Frame or image of a night file that holds several; that of --frame when left out." };

    public Option<string?> ProofProfile { get; } = new("--proof-profile") { Description = "RGB profile the proofs are written in; sRGB when left out." };

    public Option<string?> Note { get; } = new("--note") { Description = "Words kept with the look." };

    public Option<bool> Choose { get; } = new("--choose") { Description = "Print the item from this look from now on." };

    public LightOptions Light { get; } = new();

    /// <summary>The command with all of them.</summary>
    public Command AddTo(Command command)
    {
        command.Arguments.Add(Item);
        foreach (Option option in new Option[]
        {
            Day, Night, Stock, Condition, Width, Height, Bleed, FromPrint, WhitePercent, Out, Ppi, Weight, White, Strengths, Lift, Exposure, Flat, Distance,
            DayPlacing, NightPlacing, Points, DayPage, NightPage, DayFrame, NightFrame, ProofProfile, Note, Choose,
        })
            command.Options.Add(option);
        Light.AddTo(command);
        return command;
    }

    /// <summary>What was asked for, or what is wrong in words.</summary>
    public (PanelRequest? Request, string? Fault) Read(ParseResult parsed)
    {
        string? item = parsed.GetValue(Item);
        (LookScene? day, LookScene? night, string? fault) = Light.Scenes(parsed);
        fault ??= RangeFault(parsed) ?? (item is null ? PieceFault(parsed) : ItemFault(parsed));
        if (fault is not null)
            return (null, fault);
        if (Numbers(parsed.GetValue(Strengths)) is not { } strengths)
            return (null, Invariant($"--strengths: found '{parsed.GetValue(Strengths)}'; wanted shares from 0.01 to 1 with commas between, such as 0.4,1."));
        PairPoint?[] points = [.. (parsed.GetValue(Points) ?? []).Select(Point)];
        if (points.Any(p => p is null) || points.Length is not (0 or 2 or 3))
            return (null, Invariant($"--point: found {string.Join(" ", parsed.GetValue(Points) ?? [])}; wanted none, two or three of {PointForm}."));

        PanelPiece? piece = item is not null ? null : new(
            parsed.GetValue(Stock)!, parsed.GetValue(Condition)!, parsed.GetValue(Width), parsed.GetValue(Height), parsed.GetValue(Bleed),
            !parsed.GetValue(FromPrint), parsed.GetValue(WhitePercent));
        LookWish wish = new(
            parsed.GetValue(Weight), parsed.GetValue(White), strengths, parsed.GetValue(Lift), parsed.GetValue(Exposure), !parsed.GetValue(Flat),
            parsed.GetValue(Distance) * 1000);
        return (new(
            item, piece, Full(parsed.GetValue(Day)), Full(parsed.GetValue(Night)), PairOf(parsed, [.. points.OfType<PairPoint>()]), parsed.GetValue(Condition),
            parsed.GetValue(Ppi), wish, day, night, Full(parsed.GetValue(Out)), Full(parsed.GetValue(ProofProfile)), parsed.GetValue(Note)), null);
    }

    private PairWish PairOf(ParseResult parsed, IReadOnlyList<PairPoint> points) => new(
        new("", parsed.GetValue(DayPage), parsed.GetValue(DayFrame)),
        new("", parsed.GetValue(NightPage) ?? (parsed.GetValue(Night) is null ? 2 : 1), parsed.GetValue(NightFrame) ?? parsed.GetValue(DayFrame)),
        parsed.GetValue(DayPlacing), parsed.GetValue(NightPlacing), points);

    private string? RangeFault(ParseResult parsed)
    {
        foreach ((string name, double value, double least, double most) in new[]
        {
            ("--ppi", parsed.GetValue(Ppi), 10, 600), ("--weight", parsed.GetValue(Weight), 0.01, 100), ("--lift", parsed.GetValue(Lift) ?? 0, 0, 60),
            ("--exposure", parsed.GetValue(Exposure) ?? 1, 0.02, 1), ("--distance", parsed.GetValue(Distance), 0.2, 100), ("--bleed", parsed.GetValue(Bleed), 0, 100),
            ("--white-percent", parsed.GetValue(WhitePercent), 0.1, 200), ("--day-page", parsed.GetValue(DayPage), 1, 10_000),
            ("--night-page", parsed.GetValue(NightPage) ?? 1, 1, 10_000),
        })
        {
            if (!(value >= least && value <= most))
                return Invariant($"{name}: found {value}; wanted {least} to {most}.");
        }

        return null;
    }

    private string? PieceFault(ParseResult parsed)
    {
        string[] missing = [.. new (string Name, bool There)[]
        {
            ("--day", parsed.GetValue(Day) is not null), ("--night", parsed.GetValue(Night) is not null), ("--stock", parsed.GetValue(Stock) is not null),
            ("--condition", parsed.GetValue(Condition) is not null), ("--width", parsed.GetValue(Width) is > 0 and <= 10_000),
            ("--height", parsed.GetValue(Height) is > 0 and <= 10_000), ("--out", parsed.GetValue(Out) is not null),
        }.Where(n => !n.There).Select(n => n.Name)];
        if (parsed.GetValue(Choose))
            return "--choose: found no item; wanted the id of one.";
        return missing.Length > 0 ? Invariant($"Found no item and no {string.Join(", ", missing)}; wanted an item's id, or all of these.") : null;
    }

    private string? ItemFault(ParseResult parsed)
    {
        string[] beside = [.. new (string Name, bool There)[]
        {
            ("--stock", parsed.GetValue(Stock) is not null), ("--width", parsed.GetValue(Width) != 0), ("--height", parsed.GetValue(Height) != 0),
            ("--out", parsed.GetValue(Out) is not null),
        }.Where(n => n.There).Select(n => n.Name)];
        return beside.Length > 0 ? Invariant($"Found {string.Join(", ", beside)} beside an item; the item says that itself.") : null;
    }

    private static string? Full(string? path) => path is null ? null : Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));

    private static IReadOnlyList<double>? Numbers(string? text)
    {
        if (text is null)
            return [];
        double[] numbers = new double[text.Split(',').Length];
        for (int i = 0; i < numbers.Length; i++)
        {
            if (!double.TryParse(text.Split(',')[i], NumberStyles.Float, CultureInfo.InvariantCulture, out numbers[i]) || !(numbers[i] is >= 0.01 and <= 1))
                return null;
        }

        return numbers;
    }

    private static PairPoint? Point(string text)
    {
        PairUnit unit = text.EndsWith("mm", StringComparison.Ordinal) ? PairUnit.Mm : PairUnit.Percent;
        string bare = unit == PairUnit.Mm ? text[..^2] : text.EndsWith('%') ? text[..^1] : text + ",";
        string[] parts = bare.Split('=', ',');
        double[] values = new double[parts.Length];
        for (int i = 0; i < parts.Length; i++)
        {
            if (!double.TryParse(parts[i], NumberStyles.Float, CultureInfo.InvariantCulture, out values[i]))
                return null;
        }

        return values.Length == 4 && bare.Count(c => c == '=') == 1 ? new(values[0], values[1], values[2], values[3], unit) : null;
    }
}
