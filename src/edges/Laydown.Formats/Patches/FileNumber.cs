using System.Globalization;

namespace Laydown.Formats.Patches;

/// <summary>A number as files of readings write it.</summary>
internal static class FileNumber
{
    /// <summary>Reads a finite number with a decimal point or a decimal comma; no thousands.</summary>
    public static bool TryRead(string text, out double value)
    {
        string plain = text.Contains(',', StringComparison.Ordinal) && !text.Contains('.', StringComparison.Ordinal) ? text.Replace(',', '.') : text;
        return double.TryParse(plain, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
    }

    /// <summary>The shortest text that reads back as the same number.</summary>
    public static string Write(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
