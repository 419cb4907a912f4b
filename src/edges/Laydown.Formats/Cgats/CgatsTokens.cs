namespace Laydown.Formats.Cgats;

/// <summary>Splits a line of a CGATS file into its words.</summary>
internal static class CgatsTokens
{
    /// <summary>Words between spaces or tabs; quoted words whole, without their quotes; nothing from a # that opens a word.</summary>
    /// <remarks>A quote that is never closed runs to the end of the line.</remarks>
    public static List<string> Split(string line)
    {
        List<string> words = [];
        int at = 0;
        while (at < line.Length)
        {
            if (line[at] is ' ' or '\t' or '\f' or '\u00A0')
            {
                at++;
                continue;
            }

            if (line[at] == '#')
                break;
            bool quoted = line[at] == '"';
            int start = quoted ? at + 1 : at;
            int length = quoted ? line.AsSpan(start).IndexOf('"') : line.AsSpan(start).IndexOfAny(' ', '\t');
            int end = length < 0 ? line.Length : start + length;
            words.Add(line[start..end]);
            at = quoted ? end + 1 : end;
        }

        return words;
    }

    /// <summary>The cells between tabs, without quotes and outer blanks: for lines with empty cells or unquoted blanks.</summary>
    public static List<string> ByTabs(string line) => [.. line.TrimEnd('\r', '\n', '\t', ' ').Split('\t').Select(c => c.Trim().Trim('"'))];
}
