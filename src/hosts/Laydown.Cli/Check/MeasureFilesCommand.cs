using System.CommandLine;

namespace Laydown.Cli.Check;

/// <summary><c>laydown measure-files</c>: the program in its own child process, measuring customers' files for its parent. Not for people.</summary>
internal static class MeasureFilesCommand
{
    private const string Verb = "measure-files";

    public static Command Make()
    {
        Command command = new(Verb, "Measures files for another process of this program.") { Hidden = true };
        command.SetAction(async (_, _) =>
        {
            using Stream answers = Console.OpenStandardOutput();
            await Wiring.MeasureFilesAsync(Console.In, answers);
            return ExitCodes.Done;
        });
        return command;
    }

    /// <summary>How this program is started as its own child; empty where it does not lie beside its library.</summary>
    public static IReadOnlyList<string> Program()
    {
        string program = Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? "laydown.exe" : "laydown");
        return File.Exists(program) ? [program, Verb] : [];
    }
}
