using System.CommandLine;
using System.Globalization;
using Laydown.Colour.Calibration;
using Laydown.Colour.Fits;
using Laydown.Shop.Colour;

namespace Laydown.Cli.Colour;

/// <summary>Options that the verbs of colour share.</summary>
internal sealed class ColourOptions
{
    public Argument<string> File { get; } = new("file") { Description = "The file." };

    public Option<string?> Condition { get; } = new("--condition") { Description = "Id of a print condition of the shop." };

    public Option<string?> Fit { get; } = new("--fit") { Description = "A model as written by condition fit; needs no shop." };

    public Option<string?> Out { get; } = new("--out") { Description = "File to write; whole or not at all." };

    public Option<double?> Total { get; } = new("--total") { Description = "Largest sum of inks, percent of one full ink." };

    public Option<string?> Limits { get; } = new("--limits") { Description = "Most of each ink in the model's order, percent, such as 100,100,100,95." };

    public Option<BlackAmount> Black { get; } = new("--black") { Description = "How much black: least, medium, most.", DefaultValueFactory = _ => BlackAmount.Medium };

    public Option<double?> BlackStart { get; } = new("--black-start") { Description = "L* under which black starts." };

    public Option<double?> BlackWidth { get; } = new("--black-width") { Description = "Over how much L* black rises to its most." };

    public Option<bool> Relative { get; } = new("--relative") { Description = "Colours are given relative to the bare stock, which then is 100, 0, 0." };

    public Option<FitKind?> Kind { get; } = new("--kind") { Description = "Kind of model: neugebauer, cellular, regression; the best by held-out patches when left out." };

    public Option<int> Folds { get; } = new("--folds") { Description = "Parts for cross-validation, 2 to 20.", DefaultValueFactory = _ => 5 };

    public Option<bool> Thorough { get; } = new("--thorough") { Description = "Search longer for the best model." };

    public Option<int> Nodes { get; } = new("--nodes") { Description = "Nodes along L*, a*, b* of the tables: odd, 9 to 65.", DefaultValueFactory = _ => 33 };

    public Option<LinearisationAim> Aim { get; } = new("--aim")
    {
        Description = "What steps are even in: toneValue, colourDifference, density.",
        DefaultValueFactory = _ => LinearisationAim.ToneValue,
    };

    public Option<double> Most { get; } = new("--most") { Description = "The operator's own limit of one ink, percent.", DefaultValueFactory = _ => 100 };

    public Option<string?> Clean { get; } = new("--clean") { Description = "Id of the largest overprint without bleed." };

    /// <summary>How to fit.</summary>
    public FitChoices Choices(ParseResult parsed) => new(parsed.GetValue(Kind), parsed.GetValue(Folds), 1, parsed.GetValue(Thorough));

    /// <summary>Limits and black asked for, or what is wrong in words.</summary>
    public (SeparationWish Wish, string? Fault) Wish(ParseResult parsed)
    {
        double[]? limits = null;
        if (parsed.GetValue(Limits) is { } text)
        {
            string[] parts = text.Split(',');
            limits = new double[parts.Length];
            for (int i = 0; i < parts.Length; i++)
            {
                if (!double.TryParse(parts[i], NumberStyles.Float, CultureInfo.InvariantCulture, out limits[i]))
                    return (SeparationWish.Usual, Invariant($"--limits: found '{parts[i]}'; wanted percentages with commas between, such as 100,100,100,95."));
            }
        }

        return (new(parsed.GetValue(Total), limits, parsed.GetValue(Black), parsed.GetValue(BlackStart), parsed.GetValue(BlackWidth)), null);
    }
}
