namespace Laydown.Cli;

/// <summary>How the program ends; documented in docs/guide/exit-codes.md.</summary>
public static class ExitCodes
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>A check found a stop, or items are held back where <c>--strict</c> asks for none.</summary>
    public const int Held = 1;

    /// <summary>The command line could not be understood.</summary>
    public const int BadUsage = 2;

    /// <summary>Input was refused: a file, an id, a catalogue.</summary>
    public const int Refused = 3;

    /// <summary>Something the program needs is missing on this machine, such as Ghostscript.</summary>
    public const int Missing = 4;

    /// <summary>A fault of the program itself.</summary>
    public const int Internal = 5;

    /// <summary>Cancelled, as by Ctrl-C.</summary>
    public const int Cancelled = 130;
}
