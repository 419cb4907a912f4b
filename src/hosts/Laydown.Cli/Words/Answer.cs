using System.Text;
using Laydown.Formats.Json;
using Laydown.Measures;
using Spectre.Console;

namespace Laydown.Cli.Words;

/// <summary>Says what came of a command: as JSON with schema and version, as a table on a terminal, or as plain lines.</summary>
/// <param name="Out">Results.</param>
/// <param name="Error">Progress and complaints.</param>
/// <param name="AsJson">Whether JSON was asked for.</param>
internal sealed record Answer(TextWriter Out, TextWriter Error, bool AsJson)
{
    private const int Version = 1;

    /// <summary>Whether a person looks at the results.</summary>
    public bool OnTerminal => !AsJson && ReferenceEquals(Out, Console.Out) && !Console.IsOutputRedirected;

    /// <summary>Whether progress can be drawn over itself.</summary>
    public bool CanDraw => !AsJson && ReferenceEquals(Error, Console.Error) && !Console.IsErrorRedirected && !Console.IsOutputRedirected;

    /// <summary>Writes one result as JSON: <c>schema</c> (<c>laydown/</c> and the name) and <c>version</c> first, then its fields.</summary>
    public void Json<T>(string name, T result)
        where T : notnull
    {
        using MemoryStream stream = new();
        LaydownJson.WriteResult(stream, Invariant($"laydown/{name}"), Version, result);
        Out.Write(Encoding.UTF8.GetString(stream.ToArray()));
        Out.Flush();
    }

    /// <summary>Writes rows under headings on a terminal that is wide enough, else as plain lines; numbers stand to the right.</summary>
    /// <param name="headings">One for each column.</param>
    /// <param name="rows">The rows.</param>
    /// <param name="named">Whether plain lines too come under a line of headings: for figures that tell nothing without them.</param>
    public void Table(IReadOnlyList<string> headings, IEnumerable<IReadOnlyList<string>> rows, bool named = false)
    {
        List<IReadOnlyList<string>> all = [.. rows];
        if (all.Count == 0)
            return;
        int width = headings.Select((h, i) => Math.Max(h.Length, all.Max(r => r[i].Length)) + 3).Sum();
        if (OnTerminal && width <= AnsiConsole.Profile.Width)
        {
            Draw(headings, all);
            return;
        }

        if (named)
            Out.WriteLine(string.Join("  ", headings));
        all.ForEach(row => Out.WriteLine(string.Join("  ", row)));
    }

    /// <summary>Writes one line.</summary>
    public void Line(string text) => Out.WriteLine(text);

    /// <summary>Complains: faults as lines on the error stream, or as a JSON result.</summary>
    /// <returns>The exit code given.</returns>
    public int Fail(int code, string message, IReadOnlyList<InputFault> faults)
    {
        if (AsJson)
        {
            Json("error", new { exitCode = code, message, faults });
            return code;
        }

        Error.WriteLine(message);
        foreach (InputFault fault in faults)
            Error.WriteLine(Invariant($"  {fault}"));
        return code;
    }

    private static void Draw(IReadOnlyList<string> headings, List<IReadOnlyList<string>> rows)
    {
        Table table = new() { Border = TableBorder.Simple };
        for (int i = 0; i < headings.Count; i++)
        {
            bool numbers = rows.TrueForAll(r => r[i].All(c => char.IsAsciiDigit(c) || c is '.' or '-'));
            table.AddColumn(new TableColumn(Markup.Escape(headings[i])) { Alignment = numbers ? Justify.Right : Justify.Left });
        }

        rows.ForEach(row => table.AddRow([.. row.Select(Markup.Escape)]));
        AnsiConsole.Write(table);
    }
}
