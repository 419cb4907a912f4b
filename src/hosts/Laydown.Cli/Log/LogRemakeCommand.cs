using System.CommandLine;
using Laydown.Measures;
using Laydown.Plan.Log;

namespace Laydown.Cli.Log;

/// <summary><c>laydown log remake RUN</c>.</summary>
internal static class LogRemakeCommand
{
    public static Command Make(LogOptions options)
    {
        Option<RemakeCause> cause = new("--cause") { Description = "Why.", Required = true };
        Option<RemakeFound> found = new("--found") { Description = "Where it was found.", DefaultValueFactory = _ => RemakeFound.Press };
        Option<RemakePayer> payer = new("--payer") { Description = "Who pays.", DefaultValueFactory = _ => RemakePayer.Shop };
        Option<string?> item = new("--item") { Description = "The item; without, whatever is on the sheets." };
        Option<int> pieces = new("--pieces") { Description = "How many pieces.", Required = true };
        Option<double> area = new("--m2") { Description = "Material lost, m²; without area and ink both are taken from the plan." };
        Option<double> ink = new("--ml") { Description = "Ink lost, ml." };
        Option<double> minutes = new("--minutes") { Description = "Press and operator, min." };
        Option<decimal> cost = new("--cost") { Description = "What it costs; without, it is reckoned." };
        Option<string?> action = new("--action") { Description = "What was done so that it does not happen again." };
        Command command = options.Command("remake", "Pieces that must be printed again, with cause and cost.", LogKind.Remake, (parsed, entry) => entry with
        {
            Remake = new(
                parsed.GetValue(cause), parsed.GetValue(found), parsed.GetValue(item), parsed.GetValue(pieces), parsed.GetValue(area), parsed.GetValue(ink),
                parsed.GetValue(minutes), parsed.GetValue(payer), Money.FromUnits(parsed.GetValue(cost)), parsed.GetValue(cost) == 0 ? "" : "as told", parsed.GetValue(action)),
        });
        foreach (Option option in new Option[] { cause, found, payer, item, pieces, area, ink, minutes, cost, action })
            command.Options.Add(option);
        return command;
    }
}
