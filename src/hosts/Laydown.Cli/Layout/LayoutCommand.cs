using System.CommandLine;

namespace Laydown.Cli.Layout;

/// <summary><c>laydown layout …</c>: lays out any list of pieces and stocks; needs no shop.</summary>
internal static class LayoutCommand
{
    public static Command Make(Shared shared) => new("layout", "Lays out any list of pieces on boards, offcuts and rolls; checks and exports layouts.")
    {
        LayoutMakeCommand.Make(shared), LayoutCheckCommand.Make(shared), LayoutExportCommand.Make(shared), LayoutContoursCommand.Make(shared),
    };
}
