using System.Globalization;
using Laydown.Measures;

namespace Laydown.Web.Forms;

/// <summary>Reads numbers of a form; what cannot be read is kept as a fault of its field, never as 0. A comma counts as a point.</summary>
/// <param name="form">What was sent.</param>
/// <param name="file">What faults name as their file.</param>
public sealed class FormNumbers(IFormCollection form, string file)
{
    private const NumberStyles Signed = NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign;

    /// <summary>What could not be read.</summary>
    public IList<InputFault> Faults { get; } = [];

    /// <summary>What was typed, without blanks around it.</summary>
    public string Text(string field) => form[field].ToString().Trim();

    /// <summary>What was typed; null for nothing.</summary>
    public string? TextOrNone(string field) => Text(field) is { Length: > 0 } text ? text : null;

    /// <summary>A whole number.</summary>
    public int Count(string field) => CountOrNone(field) ?? Missing(field, 0);

    /// <summary>A whole number, or null where nothing was typed.</summary>
    public int? CountOrNone(string field) => TextOrNone(field) is not { } text ? null
        : int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int count) ? count : Wrong(field, text, "a whole number", 0);

    /// <summary>A number.</summary>
    public double Number(string field) => NumberOrNone(field) ?? Missing(field, 0.0);

    /// <summary>A number, or null where nothing was typed.</summary>
    public double? NumberOrNone(string field) => TextOrNone(field) is not { } text ? null
        : double.TryParse(text.Replace(',', '.'), Signed, CultureInfo.InvariantCulture, out double number) ? number : Wrong(field, text, "a number", 0.0);

    /// <summary>An amount, exact.</summary>
    public decimal Amount(string field) => TextOrNone(field) is not { } text ? Missing(field, 0m)
        : decimal.TryParse(text.Replace(',', '.'), Signed, CultureInfo.InvariantCulture, out decimal amount) && Math.Abs(amount) < 1e12m ? amount : Wrong(field, text, "a number", 0m);

    /// <summary>A day such as <c>2026-11-26</c>, or null where nothing was typed.</summary>
    public DateOnly? DayOrNone(string field) => TextOrNone(field) is not { } text ? null
        : DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day : Wrong(field, text, "a day such as 2026-11-26", default(DateOnly));

    /// <summary>Keeps a fault of a field.</summary>
    /// <returns>What stands instead, so that reading goes on and every fault is told at once.</returns>
    public T Wrong<T>(string field, string found, string wanted, T instead)
    {
        Faults.Add(new(file, null, field, found.Length > 60 ? found[..60] + "…" : found, wanted));
        return instead;
    }

    private T Missing<T>(string field, T instead) => Wrong(field, "nothing", "a number", instead);
}
