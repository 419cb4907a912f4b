using System.CommandLine;
using Laydown.Plan.Log;

namespace Laydown.Cli.Log;

/// <summary><c>laydown log</c>: what happened to runs, and what it teaches.</summary>
internal static class LogCommand
{
    public static Command Make(Shared shared)
    {
        LogOptions options = new(shared);
        return new("log", "The log of what happened, and what it teaches.")
        {
            options.Command("start", "A run is started, or goes on.", LogKind.Start, (_, entry) => entry),
            Stop(options), Ink(options), Thickness(options), Colour(options), Register(options), LogRemakeCommand.Make(options),
            options.Command("note", "Words about a run; --note tells them.", LogKind.Note, (_, entry) => entry),
            Strike(options), LogReadCommands.List(shared), LogReadCommands.Learn(shared), LogReadCommands.Charts(shared), LogReadCommands.Review(shared), OverheadCommand.Make(shared),
        };
    }

    private static Command Stop(LogOptions options)
    {
        Option<int> good = new("--good") { Description = "Good sheets since the start.", Required = true };
        Option<int> spoiled = new("--spoiled") { Description = "Spoiled sheets since the start." };
        Option<int?> made = new("--made") { Description = "Sheets the press counted." };
        Option<double?> ink = new("--ink-ml") { Description = "Ink the press counted, all channels, ml." };
        Option<bool> broken = new("--broken-off") { Description = "The run is not done and will be started again." };
        Command command = options.Command("stop", "A run is stopped: done, or broken off.", LogKind.Stop, (parsed, entry) => entry with
        {
            Stop = new(parsed.GetValue(good), parsed.GetValue(spoiled), parsed.GetValue(made), !parsed.GetValue(broken), parsed.GetValue(ink)),
        });
        foreach (Option option in new Option[] { good, spoiled, made, ink, broken })
            command.Options.Add(option);
        return command;
    }

    private static Command Ink(LogOptions options)
    {
        Argument<string> tank = new("tank") { Description = "The tank." };
        Argument<double> level = new("ml") { Description = "Its level, ml." };
        return options.PressCommand("ink", "Level of a tank as read.", LogKind.Ink, [tank, level], (parsed, entry) => entry with
        {
            Ink = new(parsed.GetRequiredValue(tank), parsed.GetRequiredValue(level)),
        });
    }

    private static Command Thickness(LogOptions options)
    {
        Argument<double[]> points = new("mm") { Description = "Four corners and the middle, mm.", Arity = ArgumentArity.OneOrMore };
        Command command = options.Command("thickness", "Thickness of a sheet at five points.", LogKind.Thickness, (parsed, entry) => entry with
        {
            Thickness = new(parsed.GetRequiredValue(points)),
        });
        command.Arguments.Add(points);
        return command;
    }

    private static Command Colour(LogOptions options)
    {
        Argument<string> patch = new("patch") { Description = "The patch." };
        Option<double> difference = new("--delta-e") { Description = "CIEDE2000 difference.", Required = true };
        Option<double?> l = new("--delta-l"), a = new("--delta-a"), b = new("--delta-b");
        Command command = options.Command("colour", "Difference of a colour from what was wanted.", LogKind.Colour, (parsed, entry) => entry with
        {
            Colour = new(parsed.GetRequiredValue(patch), parsed.GetValue(difference), parsed.GetValue(l), parsed.GetValue(a), parsed.GetValue(b)),
        });
        command.Arguments.Add(patch);
        foreach (Option option in new Option[] { difference, l, a, b })
            command.Options.Add(option);
        return command;
    }

    private static Command Register(LogOptions options)
    {
        Option<double> across = new("--across") { Description = "Across the feed, mm.", Required = true };
        Option<double> along = new("--along") { Description = "Along the feed, mm.", Required = true };
        Command command = options.Command("register", "How far layers, faces or print and cut are apart.", LogKind.Register, (parsed, entry) => entry with
        {
            Register = new(parsed.GetValue(across), parsed.GetValue(along)),
        });
        command.Options.Add(across);
        command.Options.Add(along);
        return command;
    }

    private static Command Strike(LogOptions options)
    {
        Argument<long> number = new("number") { Description = "Number of the entry." };
        Command command = options.PlainCommand("strike", "An entry was wrong and counts no more; --note says why.", LogKind.Strike, (parsed, entry) => entry with
        {
            Strikes = parsed.GetRequiredValue(number),
        });
        command.Arguments.Add(number);
        return command;
    }
}
