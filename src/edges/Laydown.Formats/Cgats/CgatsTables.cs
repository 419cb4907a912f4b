namespace Laydown.Formats.Cgats;

/// <summary>Takes a CGATS file apart into its tables.</summary>
internal sealed class CgatsTables
{
    private readonly Dictionary<string, string> keywords = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<string> fields = [];
    private bool inFields;
    private CgatsTable? open;

    /// <summary>All tables, in order; one that never ends is not closed.</summary>
    public List<CgatsTable> All { get; } = [];

    /// <summary>Takes one line.</summary>
    public void Take(int number, string line)
    {
        List<string> words = CgatsTokens.Split(line);
        if (words.Count == 0)
            return;
        switch (words[0].ToUpperInvariant())
        {
            case "END_DATA":
                Close();
                break;
            case var _ when open is not null:
                open.Data.Add((number, line, words));
                break;
            case "BEGIN_DATA_FORMAT":
                fields.Clear();
                inFields = true;
                TakeFields(words[1..]);
                break;
            case var _ when inFields:
                TakeFields(words);
                break;
            case "BEGIN_DATA":
                Begin(number);
                break;
            case "KEYWORD":
                break;
            default:
                keywords[words[0]] = string.Join(' ', words[1..]);
                break;
        }
    }

    private void TakeFields(List<string> words)
    {
        int end = words.FindIndex(w => w.Equals("END_DATA_FORMAT", StringComparison.OrdinalIgnoreCase));
        fields.AddRange(end < 0 ? words : words[..end]);
        inFields = end < 0;
    }

    private void Begin(int number)
    {
        open = new() { Keywords = new(keywords, StringComparer.OrdinalIgnoreCase), Line = number };
        open.Fields.AddRange(fields);
        All.Add(open);
    }

    // Counts belong to one table; what was said of the measuring holds on.
    private void Close()
    {
        if (open is not null)
            open.IsClosed = true;
        open = null;
        keywords.Remove("NUMBER_OF_SETS");
        keywords.Remove("NUMBER_OF_FIELDS");
    }
}
