using System.Globalization;
using System.Text;

namespace Laydown.Shop.Proof;

/// <summary>Makes words from outside fit to be kept: no control characters, none that turn the direction of writing; never taken for markup.</summary>
internal static class PlainWords
{
    /// <summary>One line.</summary>
    public static string Line(string text) => Kept(text, lines: false).Trim();

    /// <summary>Lines of text; line ends are one character each.</summary>
    public static string Lines(string text) => Kept(text.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n'), lines: true).Trim();

    /// <summary>What may stand in a complaint: short and of one line.</summary>
    public static string Cut(string text) => Line(text.Length > 60 ? text[..60] : text);

    // Runes, so that half a surrogate pair becomes the mark of a lost character.
    private static string Kept(string text, bool lines)
    {
        StringBuilder kept = new(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            UnicodeCategory category = Rune.GetUnicodeCategory(rune);
            if (rune.Value == '\n')
                kept.Append(lines ? '\n' : ' ');
            else if (rune.Value == '\t')
                kept.Append(' ');
            else if (category is not (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.PrivateUse or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator)
                || rune.Value == 0x200D)
                kept.Append(rune.ToString());
        }

        return kept.ToString();
    }
}
