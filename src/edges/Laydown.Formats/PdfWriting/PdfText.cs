using System.Globalization;
using System.Text;

namespace Laydown.Formats.PdfWriting;

/// <summary>Numbers, names and strings as PDF wants them.</summary>
internal static class PdfText
{
    /// <summary>A number with at most five decimals.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string Number(double value) =>
        double.IsFinite(value)
            ? Math.Round(value, 5).ToString("0.#####", CultureInfo.InvariantCulture) is "-0" ? "0" : Math.Round(value, 5).ToString("0.#####", CultureInfo.InvariantCulture)
            : throw new ArgumentOutOfRangeException(nameof(value), value, "PDF number: wanted a finite number.");

    /// <summary>Numbers with a blank between.</summary>
    public static string Numbers(params IEnumerable<double> values) => string.Join(' ', values.Select(Number));

    /// <summary>A name, odd characters as hex.</summary>
    public static string Name(string name)
    {
        StringBuilder text = new("/");
        foreach (byte b in Encoding.UTF8.GetBytes(name))
        {
            if (b is > 0x20 and < 0x7f && !"#/()<>[]{}%".Contains((char)b, StringComparison.Ordinal))
                text.Append((char)b);
            else
                text.Append(CultureInfo.InvariantCulture, $"#{b:X2}");
        }

        return text.ToString();
    }

    /// <summary>A text string as UTF-16 in hex.</summary>
    public static string Text(string text) => "<FEFF" + Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(text)) + ">";

    /// <summary>A date of the document, in UTC.</summary>
    public static string Date(DateTimeOffset at) => "(D:" + at.UtcDateTime.ToString("yyyyMMddHHmmss", CultureInfo.InvariantCulture) + "Z)";
}
