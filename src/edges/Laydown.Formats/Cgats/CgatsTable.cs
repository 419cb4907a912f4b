using Laydown.Formats.Patches;

namespace Laydown.Formats.Cgats;

/// <summary>One table of a CGATS file as it is written.</summary>
internal sealed class CgatsTable
{
    /// <summary>Keywords and their values, of this table and those before it.</summary>
    public Dictionary<string, string> Keywords { get; init; } = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Names of the fields.</summary>
    public List<string> Fields { get; } = [];

    /// <summary>Lines of data with their words.</summary>
    public List<(int Line, string Text, List<string> Words)> Data { get; } = [];

    /// <summary>Whether the data were closed by END_DATA.</summary>
    public bool IsClosed { get; set; }

    /// <summary>Line of BEGIN_DATA.</summary>
    public int Line { get; set; }

    /// <summary>Rows with one value for each field, or the line that does not fit.</summary>
    public (List<PatchRow> Rows, PatchRow? Misfit) Rows()
    {
        List<PatchRow> rows = new(Data.Count);
        foreach ((int line, string text, List<string> words) in Data)
        {
            List<string> cells = words.Count == Fields.Count ? words : CgatsTokens.ByTabs(text);
            if (cells.Count != Fields.Count)
                return Chunks() is { } chunks ? (chunks, null) : (rows, new(line, words));
            rows.Add(new(line, cells));
        }

        return (rows, null);
    }

    // Rows broken over several lines: taken only when the number of words is what NUMBER_OF_SETS promises.
    private List<PatchRow>? Chunks()
    {
        if (!Keywords.TryGetValue("NUMBER_OF_SETS", out string? text) || !FileNumber.TryRead(text, out double sets)
            || sets * Fields.Count != Data.Sum(d => (double)d.Words.Count))
            return null;
        List<(int Line, string Word)> words = [.. Data.SelectMany(d => d.Words.Select(w => (d.Line, w)))];
        return [.. words.Chunk(Fields.Count).Select(c => new PatchRow(c[0].Line, [.. c.Select(w => w.Word)]))];
    }
}
