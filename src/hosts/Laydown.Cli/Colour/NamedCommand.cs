using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Shop.Colour;

namespace Laydown.Cli.Colour;

/// <summary><c>laydown named list|add|solve</c>: the shop's named colours.</summary>
internal static class NamedCommand
{
    public static Command Make(Shared shared) => new("named", "The shop's named colours.") { List(shared), Add(shared), Solve(shared) };

    private static Command List(Shared shared)
    {
        Command command = new("list", "Lists the library.");
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed, (shop, answer) => Task.FromResult(Tell(answer, shop.Colour.NamedColours.List())), cancellation));
        return command;
    }

    private static Command Add(Shared shared)
    {
        Argument<string> id = new("id") { Description = "Short name, lower case with hyphens." };
        Option<string> name = new("--name") { Description = "Name for people.", Required = true };
        Option<double[]> lab = new("--lab") { Description = "L* a* b*, D50, 2° observer.", Required = true, AllowMultipleArgumentsPerToken = true, Arity = new(3, 3) };
        Option<string> source = new("--source") { Description = "Where the colour comes from.", Required = true };
        Command command = new("add", "Puts a colour into the library, or another in its place.") { id, name, lab, source };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) =>
            {
                double[] values = parsed.GetRequiredValue(lab);
                LibraryColour colour = new(
                    parsed.GetRequiredValue(id), parsed.GetRequiredValue(name), new(values[0], values[1], values[2]), null, parsed.GetRequiredValue(source));
                return Tell(answer, await shop.Colour.AddNamedColour.AddAsync(colour, cancellation));
            },
            cancellation));
        return command;
    }

    private static Command Solve(Shared shared)
    {
        ColourOptions options = new();
        Option<string> condition = new("--condition") { Description = "Id of a fitted print condition.", Required = true };
        Command command = new("solve", "Inks for every named colour, or the nearest that can be printed.")
        {
            condition, options.Total, options.Limits, options.Black, options.BlackStart, options.BlackWidth,
        };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            (shop, answer) =>
            {
                (SeparationWish wish, string? fault) = options.Wish(parsed);
                return Task.FromResult(fault is null
                    ? Tell(answer, shop.Colour.SolveNamedColours.Solve(parsed.GetRequiredValue(condition), wish, cancellation))
                    : answer.Fail(ExitCodes.BadUsage, fault, []));
            },
            cancellation));
        return command;
    }

    private static int Tell(Answer answer, Reading<ColourLibrary> library)
    {
        if (!library.IsTaken)
            return answer.Fail(ExitCodes.Refused, "The library of named colours stays as it was.", library.Faults);
        if (answer.AsJson)
            answer.Json("named-colours", library.Value);
        else
            answer.Table(["id", "name", "L*", "a*", "b*", "source"], library.Value.Colours.Select(c => (IReadOnlyList<string>)[c.Id, c.Name, One(c.Colour.L), One(c.Colour.A), One(c.Colour.B), c.Source]));
        return ExitCodes.Done;
    }

    private static int Tell(Answer answer, Reading<IReadOnlyList<SolvedColour>> solved)
    {
        if (!solved.IsTaken)
            return answer.Fail(ExitCodes.Refused, "The named colours cannot be solved.", solved.Faults);
        if (answer.AsJson)
            answer.Json("solved-colours", new { colours = solved.Value });
        else
        {
            answer.Table(["id", "dE00", "can be printed", "inks, %"], solved.Value.Select(c => (IReadOnlyList<string>)
            [
                c.Colour.Id, Invariant($"{c.Found.DeltaE00:0.00}"), c.Found.InGamut ? "yes" : "nearest",
                string.Join(", ", c.InkNames.Zip(c.Found.Inks).Where(i => i.Second > 0.0005).Select(i => Invariant($"{i.First} {i.Second * 100:0.0}"))),
            ]));
        }

        return ExitCodes.Done;
    }

    private static string One(double value) => Invariant($"{value:0.0}");
}
