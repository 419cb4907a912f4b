using System.CommandLine;
using System.Globalization;

namespace Laydown.Cli.Words;

/// <summary>Refuses numbers that would be read as others: with a comma 5,5 had been 55, and a height or a thickness would be ten times what was measured.</summary>
internal static class PlainNumbers
{
    private static readonly HashSet<Type> Fractions = [typeof(double), typeof(double?), typeof(double[]), typeof(decimal), typeof(decimal?), typeof(decimal[])];

    /// <summary>Has every number with a fraction of a command, and of those below it, looked at before it is read.</summary>
    public static void Ask(Command command)
    {
        foreach (Option option in command.Options.Where(o => Fractions.Contains(o.ValueType)))
            option.Validators.Add(given => Look(option.Name, given.Tokens.Select(t => t.Value), given.AddError));
        foreach (Argument argument in command.Arguments.Where(a => Fractions.Contains(a.ValueType)))
            argument.Validators.Add(given => Look(argument.Name, given.Tokens.Select(t => t.Value), given.AddError));
        foreach (Command below in command.Subcommands)
            Ask(below);
    }

    private static void Look(string name, IEnumerable<string> given, Action<string> wrong)
    {
        foreach (string word in given.Where(w => !IsPlain(w)))
            wrong(Invariant($"{name}: found {word}; wanted a number with a point where it has a fraction, such as 5.5."));
    }

    private static bool IsPlain(string word) =>
        double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value);
}
